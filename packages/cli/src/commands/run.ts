import { readFileSync } from 'node:fs';
import { FaultoddsError } from '@faultodds/core';
import { engineLimits } from '@faultodds/core/readings';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { check, type CheckOptions } from './check.ts';
import { CommandError } from '../terminal/commandError.ts';
import { codes, type CodesOptions } from './codes.ts';
import { list, listed, type ListOptions } from './list.ts';
import type { AskOptions } from './ask.ts';
import { plan, type PlanOptions } from './plan.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { languageCodes } from '../print/wordsOf.ts';
import { replay, type ReplayOptions } from './replay.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Runs one command line. @param argv what stands after `faultodds`. @param prompter who answers questions; a person by default.
 * @returns exit code: 0 done, 1 what was checked is not valid, 2 what was given is unknown or cannot be read */
export async function run(argv: readonly string[], terminal: Terminal, prompter?: Prompter): Promise<number> {
  let exitCode = 0;
  const program = describeProgram(terminal, prompter, (code) => {
    exitCode = code;
  });
  try {
    if (argv.length === 0) program.outputHelp();
    else await program.parseAsync([...argv], { from: 'user' });
    return exitCode;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2; // its line is written already
    const message = messageOf(error);
    if (message === undefined) throw error;
    terminal.warn(`faultodds: ${oneLine(message)}\n`);
    return 2;
  }
}

/** What is wrong with what was given; nothing when it is a fault of faultodds itself. */
function messageOf(error: unknown): string | undefined {
  if (error instanceof CommandError) return error.message;
  // refused by core: an option or a number of the case that only shows when it is computed
  if (error instanceof FaultoddsError)
    return error.problems.map(({ message, hint }) => `${message}; ${hint}`).join('. ');
  return undefined;
}

function oneLine(text: string): string {
  return text.trim().replaceAll(/\s*\n\s*/g, ' ');
}

/** Every command, with its options and what it does. @param exit takes the exit code of a command that has one of its own. */
function describeProgram(terminal: Terminal, prompter: Prompter | undefined, exit: (code: number) => void): Command {
  const program = new Command('faultodds')
    .description('Most likely causes of a persistent misfire, what to do next, and what it costs.')
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'explain a command')
    .helpCommand('help [command]', 'explain a command')
    .exitOverride()
    .configureOutput({
      writeOut: terminal.write,
      writeErr: terminal.warn,
      // commander spreads some messages over two lines
      outputError: (text, write) => write(`faultodds: ${oneLine(text.replace(/^error: /, ''))}\n`),
    });
  const shared = (command: Command): Command =>
    priced(
      command
        .addOption(wholeNumber('--top <n>', 'causes to show', 1_000))
        .addOption(wholeNumber('--steps <n>', 'tests and repairs to show', 1_000)),
    );
  const priced = (command: Command): Command =>
    command
      .addOption(amount('--labour <n>', 'labour rate per hour'))
      .addOption(currency('--currency <code>', 'currency of all amounts, as in EUR; with --labour'))
      .addOption(amount('--parts-factor <n>', "factor for the model's prices of parts"))
      .addOption(
        amount(
          '--needless-opening <n>',
          "what opening the engine for nothing counts for beyond its price; 0: nothing; default: the model's amount",
          0,
        ),
      )
      .option('--equipment <ids>', 'what is at hand, with commas: other tests are left out')
      .option('--model <path>', 'a model of your own: a file, or a folder of parts');
  shared(
    program
      .command('replay <case>')
      .description('how every result of a case changed the ranking, and what to do next (- reads standard input)'),
  )
    .addOption(wholeNumber('--doubt [draws]', 'how sure this is: over so many plausible models, default 200', 10_000))
    .addOption(
      wholeNumber(
        '--search <n>',
        'situations to examine ahead of the advice, 0: one step only; default 12, 24 where one step says repair or refer',
        1_000_000,
        0,
      ),
    )
    .option('--two', 'consider two causes at once as well')
    .option('--json', 'print data instead of text')
    .action((name: string, options: ReplayOptions) => replay(terminal, name, options));
  shared(
    program
      .command('ask [case]')
      .description('work on a case with questions and answers, from the start or from a saved one'),
  )
    .option(
      '--keep <file>',
      'a new file in which every answer is saved at once; a case from a file is saved there anyway',
    )
    .action(async (name: string | undefined, options: AskOptions) => {
      // loaded late: the other commands start without the prompts
      const { ask } = await import('./ask.ts');
      await ask(terminal, prompter, name, options);
    });
  priced(
    program
      .command('plan <case>')
      .description('the whole plan: what to do after every possible result (- reads standard input)')
      .addOption(wholeNumber('--steps <n>', 'depth to which steps are written out, default 4', 1_000))
      .addOption(
        wholeNumber(
          '--search <n>',
          'situations to examine: more take longer and narrow the bounds, default 40',
          1_000_000,
        ),
      )
      .addOption(amount('--minutes <n>', 'working time that may be spent; beyond it only the referral is left'))
      .addOption(amount('--money <n>', 'the same in money, in the currency of the prices'))
      .option('--open <access>', 'also when to open that, and which tests to do while it is open')
      .addOption(inLanguage('of the plan')),
  )
    .addOption(new Option('--mermaid', 'print the plan as a Mermaid flowchart').conflicts('json'))
    .option('--svg <file>', 'draw the plan to a file')
    .option('--json', 'print data instead of text')
    .action((name: string, options: PlanOptions) => plan(terminal, name, options));
  program
    .command('check <path>')
    .description('list every problem of a model (a file, or a folder of parts) or of a saved case')
    .option('--json', 'print data instead of text')
    .option(
      '--tables',
      'also which causes the model can tell apart at a reasonable price, and what its numbers are based on',
    )
    .addOption(inLanguage('of the problems'))
    .action(async (path: string, options: CheckOptions) => exit(await check(terminal, path, options)));
  program
    .command('list')
    .description('print names to write cases with')
    .argument('<what>', listed.join(', '))
    .option('--json', 'print data instead of text')
    .option('--model <path>', 'a model of your own: a file, or a folder of parts')
    .action((what: string, options: ListOptions) => list(terminal, what, options));
  program
    .command('codes')
    .description('what a list of trouble codes says about one cylinder')
    .argument('<codes...>', 'as the scan tool shows them (- reads standard input)')
    .addOption(wholeNumber('--cylinder <n>', 'the cylinder that misfires', most).makeOptionMandatory())
    .addOption(wholeNumber('--of <n>', 'number of cylinders', most, least).makeOptionMandatory())
    .addOption(new Option('--bank <n>', 'its bank; if not given, codes of either bank count').choices(['1', '2']))
    .option('--complete', 'the list is complete, so that missing codes count as well')
    .option('--json', 'print data instead of text')
    .option('--model <path>', 'a model of your own: a file, or a folder of parts')
    .action((pieces: readonly string[], options: CodesOptions) => codes(terminal, pieces, options));
  return program.addHelpText('after', examples);
}

const { least, most } = engineLimits;

const examples = `
Begin with:
  faultodds replay demo-07
  faultodds plan demo-03
  faultodds ask
  faultodds list cases
`;

function wholeNumber(flags: string, description: string, to: number, from = 1): Option {
  return new Option(flags, description).argParser((text: string) => {
    const number = /^\d{1,9}$/.test(text) ? Number(text) : NaN;
    if (number >= from && number <= to) return number;
    throw new InvalidArgumentError(`Expected a whole number from ${from} to ${to}.`);
  });
}

function currency(flags: string, description: string): Option {
  return new Option(flags, description).argParser((text: string) => {
    if (/^[A-Za-z]{1,20}$/.test(text)) return text;
    throw new InvalidArgumentError('Expected a code of letters, as in EUR.');
  });
}

function inLanguage(of: string): Option {
  return new Option('--language <code>', `language ${of}, default en`).choices(languageCodes);
}

function amount(flags: string, description: string, least?: 0): Option {
  return new Option(flags, description).argParser((text: string) => {
    // far above any price: core refuses what is larger
    if (!/^\d{1,9}(\.\d{1,9})?$/.test(text) || (Number(text) === 0 && least !== 0)) {
      const from = least === 0 ? '0 or a number above it' : 'a number above 0';
      throw new InvalidArgumentError(`Expected ${from} and below 1000000000, as in 85 or 85.50.`);
    }
    return Number(text);
  });
}

function version(): string {
  const file: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  return typeof file === 'object' && file !== null && 'version' in file ? String(file.version) : '';
}
