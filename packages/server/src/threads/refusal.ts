/** A task cannot be done with what was given; whoever asked is told the message. */
export class Refusal extends Error {}
