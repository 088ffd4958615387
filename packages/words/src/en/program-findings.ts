import type { RuleWords } from "../finding.ts";

/** Wording of the rules of the map for the game program. */
export const programFindings: Readonly<Record<string, RuleWords>> = {
  "address-twice": {
    title: "Two boards of one bus with the same address",
    says: "Address {address}: {0}, {rest}.",
    why: "Both answer at once, and the program cannot tell them apart.",
    todo: "Set another address on one of them.",
  },
  "bus-terminated-midway": {
    title: "The bus is ended at a board where it goes on",
    says: "{0} has its terminator set; the end of this line is {rest}.",
    why: "A terminator in the middle weakens the signal for every board behind it.",
    todo: "Take the terminator off there and set the one at the end.",
  },
  "bus-unterminated": {
    title: "The end of a bus has no terminator",
    says: "The line of the bus ends at {0} {rest}, and no terminator is set there.",
    why: "Signals come back from an open end; messages are lost now and then.",
    todo: "Set the terminator at the last board of the line.",
  },
  "device-undriven": {
    title: "No driver switches a device",
    says: "{0}: no driver of any board leads to {1}.",
    why: "The program cannot use it.",
    todo: "Wire it to a driver, or take it out.",
  },
  "device-unread": {
    title: "No input reads a contact",
    says: "{0}: no input of any board leads to {1}, and it switches no load.",
    why: "The program never sees it close.",
    todo: "Wire it to an input and its common, or take it out.",
  },
  "driver-amps": {
    title: "A driver is too weak for what hangs on it",
    says: "{0} switches {rated_a} A; what hangs on it ({loads}) draws {load_a} A: {rest}.",
    why: "The driver fails, and most fail closed: what hangs on it then stays on.",
    todo: "Use a stronger driver, or share the loads among more drivers.",
  },
  "driver-shared": {
    title: "One driver for several devices",
    says: "{0} switches {loads} devices: {rest}.",
    why: "They all fire at once.",
    todo: "Give each a driver of its own, or accept it when that is meant.",
  },
  "load-on-input": {
    title: "A load hangs on an input",
    says: "{0} ({load_kind}) leads to input {1} and to no driver.",
    why: "An input cannot switch it; the supply reaches the input through the load.",
    todo: "Wire it to a driver.",
  },
  "pulse-past-timeout": {
    title: "A pulse is longer than the board allows",
    says: "{0}: pulse {pulse_ms} ms, time-out {timeout_ms} ms.",
    why: "The board cuts every pulse short.",
    todo: "Shorten the pulse, or lengthen the time-out if the winding stands it.",
  },
  "switch-on-driver": {
    title: "A switch hangs on a driver",
    says: "{0} leads to driver {1} and to no input.",
    why: "Nobody reads it, and closing it does what the driver does.",
    todo: "Wire it to an input.",
  },
};
