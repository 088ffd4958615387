import { SaxesParser, type SaxesTagPlain } from "saxes";
import { LIMITS } from "../../limits.ts";
import type { Drawing } from "../dxf/read.ts";
import type { DrawnPath } from "../rings.ts";
import { type Affine, compose, parseTransform } from "./affine.ts";
import { page } from "./lengths.ts";
import { SVG_SHAPES } from "./shapes.ts";

/** Elements whose content is never drawn in place, or that draw nothing that is cut. */
const SILENT: ReadonlySet<string> = new Set([
  "defs",
  "symbol",
  "clipPath",
  "mask",
  "pattern",
  "marker",
  "metadata",
  "title",
  "desc",
  "style",
  "script",
  "text",
  "linearGradient",
  "radialGradient",
  "filter",
]);

const GROUPS: ReadonlySet<string> = new Set(["g", "a", "switch"]);

/** Reads the elements of an SVG as they come, with the transform that holds for each. */
class SvgReader {
  readonly paths: DrawnPath[] = [];
  readonly problems: { text: string; line: number | null }[] = [];
  /** Transforms of the open elements; null within one that is not drawn. */
  readonly #open: (Affine | null)[] = [];
  readonly #unknown = new Map<string, { count: number; line: number }>();
  #corners = 0;

  open(tag: SaxesTagPlain, line: number): void {
    const outer = this.#open[this.#open.length - 1];
    this.#open.push(this.#enter(tag, outer, line));
  }

  close(): void {
    this.#open.pop();
  }

  #enter({ name, attributes }: SaxesTagPlain, outer: Affine | null | undefined, line: number): Affine | null {
    if (outer === null) return null;
    if (outer === undefined) {
      const frame = name === "svg" ? page(attributes) : "`svg` as its outermost element";
      if (typeof frame !== "string") return frame.toMm;
      this.problems.push({ text: frame, line });
      return null;
    }
    if (name.includes(":") || SILENT.has(name) || attributes.display === "none") return null;
    const own = parseTransform(attributes.transform ?? "");
    if (own === null) {
      this.problems.push({
        text: `a transform of SVG 2; this ${name} has \`${attributes.transform}\` and is not read`,
        line,
      });
      return null;
    }
    const toMm = compose(outer, own);
    if (GROUPS.has(name)) return toMm;
    const shape = SVG_SHAPES[name]?.(attributes, toMm);
    if (shape === undefined) {
      const known = this.#unknown.get(name);
      this.#unknown.set(name, { count: (known?.count ?? 0) + 1, line: known?.line ?? line });
      return null;
    }
    this.#add(name, shape, line);
    return toMm;
  }

  #add(name: string, shape: readonly DrawnPath[] | string, line: number): void {
    const finite =
      typeof shape !== "string" &&
      shape.every(({ points }) => points.every((p) => Number.isFinite(p.xMm + p.yMm)));
    if (typeof shape === "string" || !finite) {
      const why = typeof shape === "string" ? shape : "has coordinates that are not numbers";
      this.problems.push({ text: `a closed shape; this ${name} ${why} and is not read`, line });
      return;
    }
    for (const path of shape) {
      this.#corners += path.points.length;
      if (this.#corners <= LIMITS.outlinePoints) this.paths.push(path);
    }
  }

  finish(): Drawing {
    for (const [name, { count, line }] of this.#unknown) {
      this.problems.push({
        text: `path, rect, circle, ellipse, polygon, polyline, line and groups; ${count} \`${name}\` ${count === 1 ? "element is" : "elements are"} not read`,
        line,
      });
    }
    if (this.#corners > LIMITS.outlinePoints) {
      this.problems.push({ text: `at most ${LIMITS.outlinePoints} corners after flattening`, line: null });
    }
    return { paths: this.paths, problems: this.problems };
  }
}

/** Reads what an SVG file draws, in mm with y up. Text, definitions and hidden elements are left out silently. */
export function readSvg(text: string): Drawing {
  const reader = new SvgReader();
  const parser = new SaxesParser();
  let malformed: string | null = null;
  parser.on("opentag", (tag) => reader.open(tag, parser.line));
  parser.on("closetag", () => reader.close());
  parser.on("error", (error) => {
    malformed ??= error.message;
  });
  parser.write(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text).close();
  if (malformed !== null)
    return { paths: [], problems: [{ text: `well-formed XML; ${malformed}`, line: null }] };
  return reader.finish();
}
