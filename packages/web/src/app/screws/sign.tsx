import { memo } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";

type ScrewType = ViewEntry<"screwTypes">;

/** The sign of a type as it stands in lists and on cards: shape with its shade, and its letter. */
export const ScrewSign = memo(function ScrewSign({
  type,
  sizePx = 20,
}: {
  readonly type: ScrewType | undefined;
  readonly sizePx?: number;
}) {
  const sign = type?.sign;
  if (sign == null) return <span className="screw-sign none" style={{ width: sizePx * 1.8 }} aria-hidden />;
  return (
    <svg
      className="screw-sign"
      width={sizePx * 1.8}
      height={sizePx}
      viewBox="-2.3 -2.3 8.28 4.6"
      role="img"
      aria-label={sign.letter}
    >
      <path d={sign.d} transform="scale(1 -1)" fillRule="evenodd" />
      <text x="3" y="0">
        {sign.letter}
      </text>
    </svg>
  );
});
