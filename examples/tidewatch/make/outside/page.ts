/** A place on a page or in a drawing, mm. */
export type XY = readonly [x: number, y: number];

const PT_PER_MM = 72 / 25.4;
const n = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

/** Bytes of a text in the encoding of the PDF's fonts (ISO 32000-1, annex D.2, WinAnsiEncoding; Latin-1 is in it). */
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0) & 0xff);

const escaped = (text: string): string => text.replace(/[\\()]/g, (c) => `\\${c}`);

/** A page of ISO 216 A4 across, drawn in mm from its lower left corner, as a PDF of one page. */
export class DrawnPage {
  readonly #content: string[] = [];

  /** Width of the line, mm; with dashes if wanted. */
  pen(widthMm: number, dashMm: readonly number[] = []): void {
    const dashes = dashMm.map((d) => n(d * PT_PER_MM)).join(" ");
    this.#content.push(`${n(widthMm * PT_PER_MM)} w [${dashes}] 0 d`);
  }

  line(a: XY, b: XY): void {
    this.#content.push(`${this.#at(a)} m ${this.#at(b)} l S`);
  }

  ring(points: readonly XY[]): void {
    const [first, ...others] = points;
    if (first === undefined) return;
    this.#content.push(`${this.#at(first)} m ${others.map((p) => `${this.#at(p)} l`).join(" ")} s`);
  }

  /** A circle of four Bézier curves, which leave it by less than 0.03 % of its radius. */
  circle([x, y]: XY, radius: number): void {
    const k = 0.5522847498 * radius;
    const curve = (a: XY, b: XY, c: XY): string => `${this.#at(a)} ${this.#at(b)} ${this.#at(c)} c`;
    this.#content.push(
      [
        `${this.#at([x + radius, y])} m`,
        curve([x + radius, y + k], [x + k, y + radius], [x, y + radius]),
        curve([x - k, y + radius], [x - radius, y + k], [x - radius, y]),
        curve([x - radius, y - k], [x - k, y - radius], [x, y - radius]),
        curve([x + k, y - radius], [x + radius, y - k], [x + radius, y]),
        "S",
      ].join(" "),
    );
  }

  /** A text with the height of a capital in mm; it begins at `where`, or has its middle there. */
  text(text: string, where: XY, heightMm = 2.5, middle = false): void {
    // A capital of Helvetica is 0.718 of its size, and a letter about half of it wide.
    const sizeMm = heightMm / 0.718;
    const x = middle ? where[0] - (text.length * sizeMm * 0.5) / 2 : where[0];
    this.#content.push(
      `BT /F ${n(sizeMm * PT_PER_MM)} Tf ${this.#at([x, where[1]])} Td (${escaped(text)}) Tj ET`,
    );
  }

  /** A balloon with a mark, and the line from it to what it marks. */
  balloon(mark: string, middle: XY, to: XY): void {
    const [dx, dy] = [to[0] - middle[0], to[1] - middle[1]];
    const length = Math.hypot(dx, dy);
    this.pen(0.25);
    this.circle(middle, 4);
    if (length > 4) this.line([middle[0] + (dx / length) * 4, middle[1] + (dy / length) * 4], to);
    this.text(mark, [middle[0], middle[1] - 1.7], 3.5, true);
  }

  /** A dimension along x or y between two places, its line so far off them, with its text. */
  dimension(text: string, a: XY, b: XY, offMm: number): void {
    const along = Math.abs(a[0] - b[0]) >= Math.abs(a[1] - b[1]) ? "x" : "y";
    const at = along === "x" ? a[1] + offMm : a[0] + offMm;
    const onLine = ([x, y]: XY): XY => (along === "x" ? [x, at] : [at, y]);
    this.pen(0.18);
    for (const p of [a, b]) {
      this.line(p, onLine(p));
      const [x, y] = onLine(p);
      this.line([x - 1, y - 1], [x + 1, y + 1]);
    }
    this.line(onLine(a), onLine(b));
    const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (along === "x") this.text(text, [x, at + 1.2], 2.5, true);
    else {
      // On the side that the line lies off to: there is nothing else.
      const widthMm = (text.length * 2.5 * 0.5) / 0.718;
      this.text(text, [offMm < 0 ? at - widthMm - 1.5 : at + 1.5, y - 1.2], 2.5);
    }
  }

  #at([x, y]: XY): string {
    return `${n(x * PT_PER_MM)} ${n(y * PT_PER_MM)}`;
  }

  /** The page as a PDF 1.4 (ISO 32000-1): no date, so that the same drawing gives the same bytes. */
  pdf(title: string): Uint8Array {
    const content = latin1(`1 J 1 j\n${this.#content.join("\n")}\n`);
    const size = `0 0 ${n(297 * PT_PER_MM)} ${n(210 * PT_PER_MM)}`;
    const objects: readonly (readonly Uint8Array[])[] = [
      [latin1("<</Type/Catalog/Pages 2 0 R>>")],
      [latin1("<</Type/Pages/Count 1/Kids[3 0 R]>>")],
      [latin1(`<</Type/Page/Parent 2 0 R/MediaBox[${size}]/Resources<</Font<</F 4 0 R>>>>/Contents 5 0 R>>`)],
      [latin1("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>")],
      [latin1(`<</Length ${content.length}>>stream\n`), content, latin1("endstream")],
      [latin1(`<</Title(${escaped(title)})/Producer(Pinwright examples)>>`)],
    ];
    const pieces: Uint8Array[] = [latin1("%PDF-1.4\n%\u00e2\u00e3\u00cf\u00d3\n")];
    let bytes = pieces[0]?.length ?? 0;
    const offsets = objects.map((parts, i) => {
      const at = bytes;
      const object = [latin1(`${i + 1} 0 obj\n`), ...parts, latin1("\nendobj\n")];
      pieces.push(...object);
      bytes += object.reduce((sum, piece) => sum + piece.length, 0);
      return at;
    });
    const entries = offsets.map((at) => `${String(at).padStart(10, "0")} 00000 n \n`).join("");
    const count = objects.length + 1;
    pieces.push(
      latin1(
        `xref\n0 ${count}\n0000000000 65535 f \n${entries}trailer\n<</Size ${count}/Root 1 0 R/Info 6 0 R>>\nstartxref\n${bytes}\n%%EOF\n`,
      ),
    );
    return Uint8Array.from(pieces.flatMap((piece) => [...piece]));
  }
}
