/** A long computation, cut into turns: it gives way after each of them, now and then with a better answer to show meanwhile, and returns
 * its answer. How much a turn does is counted (a draw, a state examined, a few hundred pairs), never timed. Where a question takes a
 * `signal`, it is looked at after every turn. Not to be carried on is to be given up: nothing else is held. */
export type Turns<Answer, Meanwhile = never> = Generator<Meanwhile | undefined, Answer, undefined>;
