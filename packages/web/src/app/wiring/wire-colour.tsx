import { sheetWords } from "@pinwright/words";
import { useSpeech } from "../words.tsx";

/** What the colours of IEC 60757 look like on a wire; from memory. Letters stand beside it wherever it is shown. */
const LOOKS: Readonly<Record<string, string>> = {
  BK: "#1b1b1b",
  BN: "#7a4a21",
  RD: "#c8281e",
  OG: "#e8811a",
  YE: "#f0d030",
  GN: "#2e8b3d",
  BU: "#1f5fa8",
  VT: "#7a4fa3",
  GY: "#8b8f92",
  WH: "#ffffff",
  PK: "#eda6b8",
  GD: "#b8963c",
  TQ: "#35a9a3",
  SR: "#c3c7ca",
};

/** Letter codes that a colour is written with, base then stripe: `WHRD` is white, then red. */
const codesOf = (code: string): readonly string[] => code.match(/[A-Z]{2}/gu) ?? [];

/** A piece of wire as it looks, and its letters. */
export function WireColour({ code }: { readonly code: string }) {
  const { language } = useSpeech();
  const names = new Map<string, string>(Object.entries(sheetWords(language).colours));
  const codes = codesOf(code);
  const spoken = codes.map((one) => names.get(one) ?? one).join(language === "zh" ? "、" : ", ");
  return (
    <span className="wire-colour" title={spoken}>
      <ColourBar codes={codes} />
      <span>{code === "" ? "–" : code}</span>
      <span className="visually-hidden"> {spoken}</span>
    </span>
  );
}

function ColourBar({ codes: [base, stripe] }: { readonly codes: readonly string[] }) {
  return (
    <svg width="22" height="10" aria-hidden="true" className="colour-bar">
      <rect width="22" height="10" fill={LOOKS[base ?? ""] ?? "none"} />
      {stripe !== undefined && <rect y="3.5" width="22" height="3" fill={LOOKS[stripe] ?? "none"} />}
    </svg>
  );
}
