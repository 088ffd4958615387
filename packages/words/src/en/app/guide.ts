/** The guided first ten minutes, beside the real sections. */
export const guide = {
  title: "Ten minutes with First Light",
  at: (n: number, of: number) => `Step ${n} of ${of}`,
  done: "Done",
  go: "Take me there",
  leave: "Leave the guide",
  smaller: "Make smaller",
  larger: "Show the step",
  again: "Begin again",
  finishedTitle: "That was the whole way",
  finished:
    "You moved a switch, and its wires, lists and pinboard followed. Tidewatch is the same, only larger: more than a thousand items instead of thirty-nine.",
  toTidewatch: "To all machines",
  steps: {
    move: {
      title: "Move a switch",
      text: "In Layout, drag the left lane switch (sw.left, on the underside) a few centimetres. Its wires follow while you drag, and their new lengths are shown beside it.",
      seen: "Moved. Its wires are cut to the new length everywhere: in the lists, on the pinboard and on every sheet.",
    },
    finding: {
      title: "Read a finding",
      text: "Open Findings. Each one says what is wrong with its numbers, why it matters and what to do, and leads to the place.",
      seen: "Seen. A finding that you can live with is accepted with a reason; it comes back when it gets worse.",
    },
    pinboard: {
      title: "Open a pinboard",
      text: "Open Harnesses and choose one. Its pinboard is shown as it will print, in its real size, with every peg and housing.",
      seen: "That board is what the harness is built on.",
    },
    cell: {
      title: "Change a cell in a table",
      text: "Open Tables, choose devices, and change a label or a number. Every cell of the machine is in these tables, and you can paste into them from any spreadsheet.",
      seen: "Changed, saved, and seen at once by everyone who has the book open.",
    },
    undo: {
      title: "Undo it",
      text: "Press Ctrl+Z, or the arrow in the bar above. Whatever you do here can be taken back; History shows each change with what stood there before.",
      seen: "Taken back.",
    },
    sheet: {
      title: "Make a sheet",
      text: "Open Sheets, choose a harness and a sheet, and make it as PDF. It is true to scale and can go to the bench.",
      seen: "Made. Print it at its real size, and the harness can be built.",
    },
  },
};
