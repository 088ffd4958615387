import type { Book, BookRow } from "@pinwright/book";
import { rows } from "./author.ts";
import { RUBBER_POSTS } from "./playfield-rubbers.ts";

type Rule = Partial<BookRow<"step_rules">>;

/** Rings and how many posts of `RUBBER_POSTS` each has, in their order. */
const RINGS = ["sling-left", "sling-right", "wing-left", "wing-right"] as const;
const POSTS_EACH = RUBBER_POSTS.length / RINGS.length;

const ringRules = RINGS.flatMap((ring, i): Rule[] =>
  Array.from({ length: POSTS_EACH }, (_, post) => ({
    id: `sr.post-${i * POSTS_EACH + post + 1}`,
    first_item: `fx.post-${i * POSTS_EACH + post + 1}`,
    then_item: `tp.rubber-${ring}`,
    reason: "A ring is stretched over posts that stand.",
  })),
);

const arch = ["rail-left", "rail-right", "rail-rear"].map(
  (rail): Rule => ({
    id: `sr.${rail}`,
    first_item: `tp.${rail}`,
    then_item: "tp.arch",
    reason: "The arch is bent against the rails: they stand first.",
  }),
);

/** Rules of the designer on the order of assembly, each with its reason. */
export const stepRules = (book: Book): readonly BookRow<"step_rules">[] =>
  rows("step_rules", [
    ...arch,
    ...ringRules,
    {
      id: "sr.trough-apron",
      first_item: "mech.trough",
      then_item: "tp.apron-plate",
      reason: "Four balls are run into the trough before the apron hides its mouth.",
    },
    {
      id: "sr.lock-wireform",
      first_item: "mech.lock",
      then_item: "tp.wireform-harbour",
      reason: "The release pin is set with a ball before the wireform lies over it.",
    },
    {
      id: "sr.earth-first",
      first_harness: "hs.earth-playfield",
      then_harness: "hs.coil-lower",
      reason: "The earth wires lie at the bottom; they are never taken out again.",
    },
    {
      id: "sr.mains-checked",
      first_harness: "hs.mains",
      then_step: "st.mains-check",
      reason: "The mains wiring is checked while it can still be seen.",
    },
    {
      id: "sr.mains-earth",
      first_harness: "hs.earth-supplies",
      then_step: "st.mains-check",
      reason: "The mains wiring is checked with its earth.",
    },
    ...wiredHarnesses(book).map(
      (id): Rule => ({
        id: `sr.wired-${id.slice(3)}`,
        first_harness: id,
        then_step: "st.join",
        reason: "The playfield is wired on its cradle, before it hangs in the cabinet.",
      }),
    ),
    ...book.tables.devices
      .filter(({ id }) => /^tp\.(ramp|wireform|plastic|apron-plate)/.test(id))
      .map(
        ({ id }): Rule => ({
          id: `sr.on-${id.slice(3)}`,
          first_item: id,
          then_step: "st.join",
          reason: "The upper side is finished on the cradle, where both hands reach it.",
        }),
      ),
  ]);

/** Harnesses that end on something of the playfield. */
function wiredHarnesses(book: Book): readonly string[] {
  const { devices, boards, mechanisms, ends, harnesses } = book.tables;
  const onField = new Set(
    [...devices, ...boards, ...mechanisms].flatMap(({ id, panel }) => (panel === "playfield" ? [id] : [])),
  );
  const wired = new Set(
    ends.filter(({ point }) => onField.has(point.split(/[:/]/)[0] ?? "")).map(({ harness }) => harness),
  );
  return harnesses.map(({ id }) => id).filter((id) => wired.has(id));
}
