import { at, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Mark } from "../compose/mark.ts";
import { FIELD, type TableColumn } from "../compose/table.ts";
import { leadingMm } from "../compose/text.ts";
import { headed, listed, plain, row } from "./certificate-parts.ts";
import { type CertificateInput, headsOf, type StreamHead, wordsOf } from "./texts.ts";

/** Digits of a hash in its short form: people compare so many by eye. */
const SHORT = 12;
/** Heads in one code: more make squares too small for a camera. */
const HEADS_IN_CODE = 6;
const CODE_MM = 42;
/** Room round a code; ISO/IEC 18004 asks for 4 of its squares, of which the largest here has 97. */
const QUIET_MM = 4;

/** What the text of a code with heads begins with. */
const MARK = "pinwright-heads";

const shortHash = (hash: string): string => hash.slice(0, SHORT).replace(/(.{4})(?=.)/gu, `$1 `);

/** Texts of the codes that hold heads: a line each, `stream number hash`, under a line that says what it is and of which unit. */
export function headCodes(unit: string, heads: readonly StreamHead[]): readonly string[] {
  const codes: string[] = [];
  for (let from = 0; from < heads.length; from += HEADS_IN_CODE) {
    const lines = heads
      .slice(from, from + HEADS_IN_CODE)
      .map(({ stream, seq, hash }) => `${stream} ${seq} ${hash}`);
    codes.push([`${MARK} ${unit}`, ...lines].join("\n"));
  }
  return codes;
}

/** Codes side by side, each with its number over it. */
function codeBlocks(input: CertificateInput, unit: string, widthMm: number): readonly Block[] {
  const codes = headCodes(unit, input.heads);
  const cellMm = CODE_MM + 2 * QUIET_MM;
  const columns = Math.max(1, Math.floor(widthMm / cellMm));
  const blocks: Block[] = [];
  for (let from = 0; from < codes.length; from += columns) {
    const marks = codes.slice(from, from + columns).flatMap((text, i): Mark[] => [
      write(`${from + i + 1} / ${codes.length}`, at(i * cellMm + QUIET_MM, TEXT.small), {
        heightMm: TEXT.small,
      }),
      {
        kind: "code",
        at: at(i * cellMm + QUIET_MM, leadingMm(TEXT.small) + QUIET_MM),
        sizeMm: CODE_MM,
        text,
        layer: "TEXT",
      },
    ]);
    blocks.push({ heightMm: leadingMm(TEXT.small) + cellMm, marks });
  }
  return blocks;
}

/** The heads of the streams, short to be compared by eye, whole and in codes to be checked; and room for those who sign. */
export function headBlocks(input: CertificateInput, unit: string, widthMm: number): readonly Block[] {
  const heads = headsOf(input.options);
  const words = wordsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.certificate.stream), grow: true },
    { header: heads((w) => w.records.certificate.number), align: "end", whole: true },
    { header: heads((w) => w.records.certificate.hash), weight: "bold", whole: true, detail: true },
  ];
  const rows = input.heads.map(({ stream, seq, hash }) =>
    row([stream, String(seq), `${shortHash(hash)}\n${hash}`]),
  );
  const field = (choose: Parameters<typeof words>[0]): TableColumn => ({
    header: heads(choose),
    heightMm: 5,
    grow: true,
  });
  return [
    ...headed(
      input,
      (w) => w.records.certificate.heads,
      widthMm,
      rows.length === 0
        ? [plain(input, (w) => w.records.certificate.noHeads, widthMm)]
        : [
            plain(input, (w) => w.records.certificate.headsHint, widthMm, TEXT.small),
            gap(1),
            ...listed(input, columns, rows, widthMm),
            gap(2),
            ...codeBlocks(input, unit, widthMm),
          ],
    ),
    gap(4),
    ...listed(
      input,
      [
        field((w) => w.records.certificate.tester),
        field((w) => w.records.certificate.releaser),
        { ...field((w) => w.records.certificate.date), grow: false, minMm: 38 },
      ],
      [row([FIELD, FIELD, FIELD])],
      widthMm,
    ),
  ];
}
