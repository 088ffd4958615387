/** One pair of lines of a DXF file: what the value is, and the value. */
interface DxfGroup {
  readonly code: number;
  readonly value: string;
  /** Line of the code in the file, counted from 1. */
  readonly line: number;
}

/** One entity: its type and the groups up to the next entity. */
export interface DxfEntity {
  readonly type: string;
  readonly line: number;
  readonly groups: readonly DxfGroup[];
}

/** A block: entities that are drawn wherever it is inserted. */
interface DxfBlock {
  readonly xBase: number;
  readonly yBase: number;
  readonly entities: readonly DxfEntity[];
}

/** What outlines need of a DXF file. */
export interface DxfFile {
  /** `$INSUNITS`, or null when the file does not say. */
  readonly unit: number | null;
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly entities: readonly DxfEntity[];
}

/** First number with a group code, or `otherwise`. */
export function numberOf(entity: DxfEntity, code: number, otherwise: number): number {
  const group = entity.groups.find((g) => g.code === code);
  const value = group === undefined ? otherwise : Number(group.value);
  return Number.isFinite(value) ? value : otherwise;
}

/** First text with a group code, or an empty one. */
export const textOf = (entity: DxfEntity, code: number): string =>
  entity.groups.find((g) => g.code === code)?.value ?? "";

/** All numbers with a group code, in order. */
export const numbersOf = (entity: DxfEntity, code: number): number[] =>
  entity.groups.filter((g) => g.code === code).map((g) => Number(g.value));

function toGroups(text: string): DxfGroup[] | string {
  const lines = text.split(/\r\n|\n|\r/);
  const groups: DxfGroup[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number((lines[i] ?? "").trim());
    if (!Number.isInteger(code) || (lines[i] ?? "").trim() === "")
      return `line ${i + 1} should be a group code`;
    groups.push({ code, value: (lines[i + 1] ?? "").trim(), line: i + 1 });
    if (code === 0 && groups[groups.length - 1]?.value === "EOF") return groups;
  }
  return "the file ends before `EOF`; it was cut off";
}

/** Splits groups at group code 0. */
function toEntities(groups: readonly DxfGroup[]): DxfEntity[] {
  const entities: { type: string; line: number; groups: DxfGroup[] }[] = [];
  for (const group of groups) {
    if (group.code === 0) entities.push({ type: group.value, line: group.line, groups: [] });
    else entities[entities.length - 1]?.groups.push(group);
  }
  return entities;
}

function toBlocks(entities: readonly DxfEntity[]): Map<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>();
  let open: { name: string; xBase: number; yBase: number; entities: DxfEntity[] } | null = null;
  for (const entity of entities) {
    if (entity.type === "BLOCK") {
      open = {
        name: textOf(entity, 2),
        xBase: numberOf(entity, 10, 0),
        yBase: numberOf(entity, 20, 0),
        entities: [],
      };
      blocks.set(open.name, open);
    } else if (entity.type === "ENDBLK") open = null;
    else open?.entities.push(entity);
  }
  return blocks;
}

function unitOf(header: readonly DxfGroup[]): number | null {
  const at = header.findIndex((g) => g.code === 9 && g.value === "$INSUNITS");
  return at < 0 ? null : Number(header[at + 1]?.value ?? 0);
}

/**
 * Reads the tagged text of a DXF file (the ASCII form of the DXF Reference of any release since R12) as far
 * as outlines need it. Returns what is wrong with it as text.
 */
export function readDxfGroups(text: string): DxfFile | string {
  if (text.startsWith("AutoCAD Binary DXF")) return "this is a binary DXF; save it as ASCII DXF";
  const groups = toGroups(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  if (typeof groups === "string") return groups;
  const sections = new Map<string, DxfGroup[]>();
  let section: DxfGroup[] | null = null;
  for (const [i, group] of groups.entries()) {
    if (group.code === 0 && group.value === "SECTION") {
      section = [];
      sections.set(groups[i + 1]?.value ?? "", section);
    } else if (group.code === 0 && group.value === "ENDSEC") section = null;
    else section?.push(group);
  }
  const entities = sections.get("ENTITIES");
  if (entities === undefined) return "no section ENTITIES; this is no DXF drawing";
  return {
    unit: unitOf(sections.get("HEADER") ?? []),
    blocks: toBlocks(toEntities(sections.get("BLOCKS") ?? [])),
    entities: toEntities(entities),
  };
}
