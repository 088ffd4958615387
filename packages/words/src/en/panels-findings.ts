import type { RuleWords } from "../finding.ts";

/** Wording of the rules of panels. */
export const panelsFindings: Readonly<Record<string, RuleWords>> = {
  "panel-no-sheet": {
    title: "A panel has no sheet to be cut from",
    says: "{0}, {thickness_mm} mm thick: the shop has no stock sheet for it {rest}.",
    why: "It is on no cutting plan, and its wood is in no bill.",
    todo: "Name the sheet goods in the panel's part, and add a stock sheet of that part to the shop.",
  },
  "panel-too-big": {
    title: "A panel is larger than any sheet",
    says: "{0}: {along_mm} mm along and {across_mm} mm across the grain; {1} gives {sheet_along_mm} × {sheet_across_mm} mm inside its trim.",
    why: "No cutting plan can hold it.",
    todo: "Make the panel smaller, split it, turn its grain, or stock a larger sheet.",
  },
  "panel-grain": {
    title: "The grain costs sheets",
    says: "{0}: {pieces_with_grain} to a sheet with its grain, {pieces_turned} turned across it.",
    why: "Where nobody sees the face, the grain need not run this way.",
    todo: "Leave the grain as it is where it shows; else set the panel's grain to none.",
  },
  "panel-setting": {
    title: "Panels of one fence setting have different sizes",
    says: "Setting {setting} of {0}, {rest}: from {least_mm} to {most_mm} mm.",
    why: "One setting of the fence cuts one size: panels that mate would not match.",
    todo: "Correct a size, let them follow the same thickness, or give one another setting.",
  },
  "thickness-far": {
    title: "A sheet's measured thickness is far from its nominal one",
    says: "{0}: measured {measured_mm} mm, sanded plywood is {least_mm} to {most_mm} mm.",
    why: "It is another sheet, or was measured wrong; every joint follows this figure.",
    todo: "Measure again with a caliper away from the edge; correct the figure or the sheet.",
  },
  "thickness-mixed": {
    title: "Sheets of one kind have different thicknesses",
    says: "{0}: measured {measured_mm} mm; panels of {1} are sized for {cut_for_mm} ± {tolerance_mm} mm.",
    why: "A panel from this sheet does not fit joints made for the other, so no plan uses it.",
    todo: "Keep it for something else, or cut a whole machine from sheets of one thickness.",
  },
  "slot-thickness": {
    title: "A slot does not take its panel",
    says: "{2} in {0}: drawn {drawn_mm} mm for {1} of {nominal_mm} mm; it will be cut {slot_mm} mm, the panel may be {most_mm} mm thick.",
    why: "The panel does not go in, or stands loose.",
    todo: "Draw the slot for this panel, or give grooves more play in the shop's settings.",
  },
  "fit-worst": {
    title: "A fit can fail when every tolerance is at its worst",
    says: "{0} of {rest}: {from_mm} to {to_mm} mm at worst; asked {asked_min_mm} to {asked_max_mm} mm.",
    why: "Most boxes will come out; some may not.",
    todo: "Cut mating sizes at one setting, let a size follow the thickness, or allow more.",
  },
  "fit-likely": {
    title: "A fit will often fail",
    says: "{0} of {rest}: {from_mm} to {to_mm} mm is likely; asked {asked_min_mm} to {asked_max_mm} mm.",
    why: "Even when tolerances partly cancel out, boxes come out wrong.",
    todo: "Correct the sizes: let them follow the measured thickness, or change what is asked.",
  },
};
