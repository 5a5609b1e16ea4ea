/** A long computation, cut into turns: it gives way after each of them, now and then with a better answer to show meanwhile, and returns
 * its answer. How much a turn does is counted (a draw, a state examined, a few hundred pairs), never timed. Where a question takes a
 * `signal`, it is looked at after every turn. To give it up, do not continue it: it holds no other resources. */
export type Turns<Answer, Meanwhile = never> = Generator<Meanwhile | undefined, Answer, undefined>;
