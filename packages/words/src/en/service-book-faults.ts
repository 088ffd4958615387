/** How faults are found, as an owner with a cheap meter can. */
export const serviceBookFaults = {
  hint: "Most faults of an old machine are dirt, a loose plug, a tired contact or a fuse. Go down this list in its order, and stop when it works.",
  order: "The order",
  steps: [
    "Look. Plug out. A wire off, a burnt part, a loose screw, something that lies where it should not, a plug half out.",
    "Wiggle. Plug out. Move the part by hand: does it rub, stick, or not come back? Move the wires near their ends.",
    "Reseat. Plug out. Pull each plug of the circuit by its housing and push it home, two or three times: that cleans the contacts.",
    "Resistance. Plug out, plug of the part pulled. Compare with the tables of this book and with a like part that works.",
    "Change over. Swap with a like part or board that works, its address set. Does the fault go with it?",
    "Voltage. Last, and only the tests that this book gives to the owner. All others: a licensed electrician.",
  ],
  page: "The fault page",
  pageSays:
    "A page for any phone or computer comes with the machine and works without a network. Tick what works and what does not; it names the likeliest causes and the next thing to look at. It knows every wire of this machine.",
  ways: "Common faults",
  shows: "What you see",
  look: "Look here first",
  pages: "Page",
  rows: {
    dead: {
      shows: "Nothing at all: no lamp, no sound",
      look: "Is the plug in, and does the outlet work? Then the fuses, plug out. If a mains fuse blows again: a licensed electrician.",
    },
    rail: {
      shows: "Many things at once, of one kind or one place",
      look: "They share a fuse, a supply or an in-line connector: see what stops when a fuse is open. Reseat the connector that they share.",
    },
    board: {
      shows: "Everything of one board",
      look: "Its bus plug, its supply plug, its fuses; then the plug of the board before it. Then change it over for a like one.",
    },
    switch: {
      shows: "One switch does nothing",
      look: "Dirt between the contacts; a gap too wide; a wire off a terminal; its plug. Resistance over its two terminals: closed next to nothing, open endless.",
    },
    switchOn: {
      shows: "One switch is always on",
      look: "A ball or rubber rests on it; a gap too narrow; a blade bent; terminals that touch. Pull its plug: does the display say off?",
    },
    matrix: {
      shows: "Several switches of one row or column",
      look: "The wire that they share, and its plug at the board; then a diode at one of them.",
    },
    lamp: {
      shows: "One lamp is dark",
      look: "Its plug or terminals; then change it over for a like one that works.",
    },
    lamps: {
      shows: "Half the lamps of a board are dark",
      look: "The fuse of that half on the board; it resets by itself when what overloads it is gone. Look for a wire that touches metal.",
    },
    coil: {
      shows: "One coil does nothing",
      look: "Does its switch work? Does the mechanism move freely by hand? A wire off its lug; its plug; its fuse; its resistance.",
    },
    coilWeak: {
      shows: "A coil is weak or slow",
      look: "Dirt and wear: sleeve, plunger, linkage; a spring too strong; the gap of an end-of-stroke switch. Then its plugs.",
    },
    coilOn: {
      shows: "A coil stays on, hums or smells",
      look: "Switch off at once and pull the plug. Let it cool. Is its switch stuck? Then its board.",
    },
    fuse: {
      shows: "A fuse blows again and again",
      look: "Do not try a larger one. Pull the plugs behind it one by one, plug out each time; measure each coil: one of far fewer ohms than the table is the cause.",
    },
    motor: {
      shows: "A motor does not run, or does not stop",
      look: "Does it turn by hand? Its home switch; its plug; its fuse.",
    },
    sound: {
      shows: "No sound, or from one side only",
      look: "The volume; the plugs of the speakers; the resistance of a speaker.",
    },
    sometimes: {
      shows: "It comes and goes",
      look: "When warm, when shaken, after a hit? Wiggle wires and plugs one by one while somebody watches the switch test. Look at each solder joint and crimp of that circuit.",
    },
  },
} as const;
