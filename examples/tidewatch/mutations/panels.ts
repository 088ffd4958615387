import type { BookRow, ShopRow } from "@pinwright/book";
import type { FitResult, PanelCut } from "@pinwright/engine";
import { ids, least, most, some } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";

const nothing = (): void => {};

const cutsOf = ({ panels }: Sound): readonly PanelCut[] => panels.cuts;

/** Fits that a panel has a part in. */
const fitsOf = ({ panels }: Sound, panelIds: readonly string[]): readonly string[] =>
  panels.fits
    .filter(({ terms }) => terms.some(({ panelId }) => panelId !== null && panelIds.includes(panelId)))
    .map(({ fitId }) => fitId);

/** When a panel's size or thickness is another, its fits may fail and its slots be wrong. */
const fitsFollow = (sound: Sound, panelIds: readonly string[]): readonly Consequence[] => [
  some("fit-likely", ids(...fitsOf(sound, panelIds))),
  some("fit-worst", ids(...fitsOf(sound, panelIds))),
];

/** Whole sheets of a kind of goods that were measured. */
const measured = ({ machine }: Sound): readonly ShopRow<"stock_sheets">[] =>
  machine.shop.tables.stock_sheets.filter((row) => row.measured_mm !== null && !row.offcut);

const cutFrom = (sound: Sound, partId: string): readonly string[] =>
  cutsOf(sound)
    .filter(({ sheetPartId }) => sheetPartId === partId)
    .map(({ panelId }) => panelId);

/** Panels whose size follows the thickness of one of these. */
const following = ({ machine }: Sound, panelIds: readonly string[]): readonly string[] =>
  machine.book.tables.panel_sizes
    .filter(({ thickness_of }) => thickness_of !== null && panelIds.includes(thickness_of))
    .map(({ panel }) => panel);

/** How much worse a fit may get before it fails likely. */
const spareOf = ({ minMm, rssMinMm }: FitResult): number => rssMinMm - (minMm ?? Number.NEGATIVE_INFINITY);

const sizesNamed = ({ machine }: Sound, setting: string): readonly BookRow<"panel_sizes">[] =>
  machine.book.tables.panel_sizes.filter((row) => row.setting === setting);

/** The name of a setting that most panels are cut at. */
const widestSetting = (sound: Sound): string =>
  most(
    [...new Set(sound.machine.book.tables.panel_sizes.map((row) => row.setting))].filter(
      (name) => name !== "",
    ),
    (name) => sizesNamed(sound, name).length,
  );

/** Mistakes in the sizes of panels, their sheets, slots and fits. */
export const panels: readonly Mutation[] = [
  {
    name: "the smallest panel names no sheet goods",
    rule: "panel-no-sheet",
    plan: (sound) => {
      const { panelId, sheetPartId } = least(cutsOf(sound), ({ widthMm, heightMm }) => widthMm * heightMm);
      const part = sheetPartId ?? "";
      return {
        victim: [panelId],
        change: (edit) => edit.set("panels", { id: panelId }, { part: "" }),
        follows: [
          some("part-unnamed", ids(panelId)),
          ...fitsFollow(sound, [panelId, ...following(sound, [panelId])]),
        ],
        ends: [some("single-source", ids(part)), some("long-lead", ids(part))],
      };
    },
  },
  {
    name: "whole sheets of the goods of most panels shorter than the longest of them",
    rule: "panel-too-big",
    plan: (sound) => {
      const stock = most(measured(sound), ({ part }) => cutFrom(sound, part).length);
      const own = cutsOf(sound).filter(({ sheetPartId }) => sheetPartId === stock.part);
      const longest = most(own, ({ widthMm, heightMm }) => Math.max(widthMm, heightMm));
      const length_mm = Math.floor(Math.max(longest.widthMm, longest.heightMm));
      return {
        victim: [longest.panelId],
        change: nothing,
        changeShop: (edit) => edit.set("stock_sheets", { id: stock.id }, { length_mm }),
        follows: [
          some("panel-too-big", ids(...own.map(({ panelId }) => panelId))),
          some("panel-grain", ids(...own.map(({ panelId }) => panelId))),
        ],
      };
    },
  },
  {
    name: "the panel across whose grain most more would fit, told to run along its other side",
    rule: "panel-grain",
    plan: (sound) => {
      const along = ({ grain, widthMm, heightMm }: PanelCut): number => (grain === "x" ? widthMm : heightMm);
      const across = ({ grain, widthMm, heightMm }: PanelCut): number => (grain === "x" ? heightMm : widthMm);
      const { panelId, grain } = most(
        cutsOf(sound).filter((cut) => cut.grain !== "none" && along(cut) > across(cut)),
        along,
      );
      return {
        victim: [panelId],
        change: (edit) => edit.set("panels", { id: panelId }, { grain: grain === "x" ? "y" : "x" }),
        follows: [some("panel-too-big", ids(panelId))],
      };
    },
  },
  {
    name: "one of the setting that most sizes share drawn two millimetres longer",
    rule: "panel-setting",
    plan: (sound) => {
      const setting = widestSetting(sound);
      const [row] = sizesNamed(sound, setting);
      const panel = row?.panel ?? "";
      const drawn = sound.machine.panels.get(panel);
      const column = row?.direction === "y" ? "height_mm" : "width_mm";
      return {
        victim: [panel],
        change: (edit) => edit.set("panels", { id: panel }, { [column]: (drawn?.[column] ?? 0) + 2 }),
        follows: fitsFollow(sound, [panel]),
      };
    },
  },
  {
    name: "the thickest sheet measured two millimetres too thin",
    rule: "thickness-far",
    plan: (sound) => {
      const stock = most(measured(sound), ({ thickness_mm }) => thickness_mm);
      const own = cutFrom(sound, stock.part);
      return {
        victim: [stock.id],
        change: nothing,
        changeShop: (edit) =>
          edit.set("stock_sheets", { id: stock.id }, { measured_mm: stock.thickness_mm - 2 }),
        follows: [
          ...fitsFollow(sound, [...own, ...following(sound, own)]),
          some("thickness-mixed", (id) => id === stock.part),
          some("panel-setting", ids(...following(sound, own))),
        ],
      };
    },
  },
  {
    name: "an offcut of the thickest goods half a millimetre thicker than whole sheets",
    rule: "thickness-mixed",
    plan: (sound) => {
      const stock = most(measured(sound), ({ thickness_mm }) => thickness_mm);
      const offcut = sound.machine.shop.tables.stock_sheets.find(
        (row) => row.offcut && row.part === stock.part,
      );
      return {
        victim: [offcut?.id ?? ""],
        change: nothing,
        changeShop: (edit) =>
          edit.set("stock_sheets", { id: offcut?.id ?? "" }, { measured_mm: (stock.measured_mm ?? 0) + 0.5 }),
      };
    },
  },
  {
    name: "the longest slot for a panel drawn half as wide",
    rule: "slot-thickness",
    plan: (sound) => {
      const { cutouts } = sound.machine.book.tables;
      const row = most(
        cutouts.filter(({ takes }) => takes !== null),
        ({ height_mm, width_mm }) => Math.max(height_mm ?? 0, width_mm ?? 0),
      );
      const column = (row.width_mm ?? 0) <= (row.height_mm ?? 0) ? "width_mm" : "height_mm";
      return {
        victim: [row.panel, row.id],
        change: (edit) => edit.set("cutouts", { id: row.id }, { [column]: (row[column] ?? 0) / 2 }),
      };
    },
  },
  {
    name: "the fit with least to spare asked for so much more that it fails at worst only",
    rule: "fit-worst",
    plan: (sound) => {
      const fit = least(
        sound.panels.fits.filter(
          ({ minMm, rssMinMm, worstMinMm }) => minMm !== null && rssMinMm - worstMinMm > 0.2,
        ),
        spareOf,
      );
      const min_mm = Math.round((fit.worstMinMm + 0.1) * 100) / 100;
      return { victim: [fit.fitId], change: (edit) => edit.set("fits", { id: fit.fitId }, { min_mm }) };
    },
  },
  {
    name: "the fit with most to spare asked for more than it likely is",
    rule: "fit-likely",
    plan: (sound) => {
      const fit = most(
        sound.panels.fits.filter(({ minMm }) => minMm !== null),
        spareOf,
      );
      const min_mm = Math.round((fit.rssMinMm + 0.1) * 100) / 100;
      return { victim: [fit.fitId], change: (edit) => edit.set("fits", { id: fit.fitId }, { min_mm }) };
    },
  },
];
