/** Sheets: choosing, making and fetching them. */
export const prints = {
  title: "Sheets",
  intro:
    "Choose what the floor needs. Sheets are made on the office computer; you can go on working meanwhile.",
  noHarnesses: "There are no harnesses yet, so there are no sheets to make.",
  machine: "Machine",
  assembly: "Assembly of the machine",
  machines: "Made together: machines",
  making: "Panels, boards and parts",
  harnesses: "Harnesses",
  kinds: "Kinds of sheet, for each harness",
  formats: "Files",
  language: "Language",
  languages: { en: "English", zh: "中文", both: "Both" },
  formatNames: {
    pdf: "PDF, to print",
    svg: "SVG, drawings",
    dxf: "DXF, for drilling the board",
    xlsx: "XLSX, lists",
    csv: "CSV, lists",
  },
  all: "All",
  none: "None",
  chosen: (n: number, of: number) => `${n} of ${of}`,
  make: "Make the sheets",
  makeSays: (machine: number, assembly: number, harnesses: number, kinds: number) =>
    [
      machine === 0 ? "" : `${machine} ${machine === 1 ? "sheet" : "sheets"} of the machine`,
      assembly === 0
        ? ""
        : `${assembly} ${assembly === 1 ? "kind" : "kinds"} of sheet for making and assembling it`,
      harnesses === 0
        ? ""
        : `${kinds} ${kinds === 1 ? "kind" : "kinds"} of sheet for ${harnesses} ${harnesses === 1 ? "harness" : "harnesses"}`,
    ]
      .filter((text) => text !== "")
      .join(", "),
  chooseFirst: "Choose at least one sheet, one harness where it is of a harness, and one kind of file.",
  failed: (why: string) => `The sheets were not asked for: ${why}`,
  made: "Made lately",
  noJobs:
    "No sheets were made lately. Choose what you need and press “Make the sheets”: the files appear here.",
  states: {
    waiting: "Waiting",
    running: "Being made",
    done: "Done",
    cancelled: "Stopped",
    failed: "Failed",
  },
  progress: (done: number, total: number) => `${done} of ${total}`,
  preparing: "Reading the book and working out its wires …",
  cancel: "Stop",
  from: (changeNo: number) => `made from change ${changeNo}`,
  current: "The book is still the same.",
  changedSince: (n: number) =>
    n === 1 ? "The book has changed once since." : `The book has changed ${n} times since.`,
  files: (n: number) => (n === 1 ? "1 file" : `${n} files`),
  allFiles: "All in one .zip",
  filesOf: (harness: string, n: number) => `${harness}: ${n} ${n === 1 ? "file" : "files"}`,
  other: "Other files",
  size: (kilobytes: string) => `${kilobytes} kB`,
};
