import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";
import { percentText, shareStep } from "./currents/figures.ts";
import { mmText } from "./number-text.ts";
import { WireColour } from "./wire-colour.tsx";
import "./currents/share.css";
import "./housing.css";

export type Housing = ViewEntry<"housings">;
export type Cavity = Housing["cavities"][number];

/** What is lit up in all housings that are shown: a point that was chosen, or the wire under the pointer. */
export interface Lit {
  readonly pointId: string | null;
  readonly wireId: string | null;
}

/** A housing as it looks from the wire-entry side, every cavity a button. */
export function HousingView({
  housing,
  shareOf,
  lit,
  onPoint,
  onHover,
}: {
  readonly housing: Housing;
  /** How much of its limit a contact uses; null where that is not known. Blank: it is not shown. */
  readonly shareOf?: (pointId: string) => number | null;
  readonly lit: Lit;
  readonly onPoint: (cavity: Cavity) => void;
  readonly onHover: (wireId: string | null) => void;
}) {
  const words = useWords().wiring;
  return (
    <div className="housing-scroll">
      <fieldset
        className="housing"
        data-bare={housing.isHousing ? undefined : ""}
        style={{ gridTemplateColumns: `repeat(${housing.columns}, minmax(64px, max-content))` }}
      >
        <legend className="visually-hidden">{housing.landingId}</legend>
        {housing.cavities.map((cavity) => (
          <CavityCell
            key={cavity.pointId}
            cavity={cavity}
            share={shareOf?.(cavity.pointId) ?? null}
            isFirst={housing.isHousing && cavity.name === "1"}
            mirrored={housing.half === "b"}
            chosen={lit.pointId === cavity.pointId}
            glowing={lit.wireId !== null && cavity.wires.some((wire) => wire.id === lit.wireId)}
            state={words.cavityStates[cavity.state]}
            onPress={() => onPoint(cavity)}
            onHover={onHover}
          />
        ))}
      </fieldset>
    </div>
  );
}

function CavityCell({
  cavity,
  share,
  isFirst,
  mirrored,
  chosen,
  glowing,
  state,
  onPress,
  onHover,
}: {
  readonly cavity: Cavity;
  readonly share: number | null;
  readonly isFirst: boolean;
  readonly mirrored: boolean;
  readonly chosen: boolean;
  readonly glowing: boolean;
  readonly state: string;
  readonly onPress: () => void;
  readonly onHover: (wireId: string | null) => void;
}) {
  const first = cavity.wires[0]?.id ?? null;
  return (
    <button
      type="button"
      className="cavity"
      data-state={cavity.state}
      data-glowing={glowing ? "" : undefined}
      aria-pressed={chosen}
      title={[cavity.pointId, cavity.use, cavity.netId ?? ""].filter(Boolean).join(" · ")}
      style={{ gridColumn: cavity.column + 1, gridRow: cavity.row + 1 }}
      onClick={onPress}
      onPointerEnter={() => onHover(first)}
      onPointerLeave={() => onHover(null)}
      onFocus={() => onHover(first)}
      onBlur={() => onHover(null)}
    >
      <span className="cavity-name">
        {isFirst && !mirrored && <span aria-hidden="true">▶ </span>}
        {cavity.name}
        {isFirst && mirrored && <span aria-hidden="true"> ◀</span>}
      </span>
      {cavity.wires.length === 0 ? (
        <span className="cavity-state">{state}</span>
      ) : (
        cavity.wires.map((wire) => (
          <span key={wire.id} className="cavity-wire">
            <WireColour code={wire.colour} />
            <b>{wire.printed}</b>
          </span>
        ))
      )}
      {share !== null && share > 0 && <CavityShare share={share} />}
    </button>
  );
}

function CavityShare({ share }: { readonly share: number }) {
  const words = useWords().electric;
  return (
    <span className="cavity-share" data-step={shareStep(share)} title={words.ofLimit(percentText(share))}>
      <i style={{ width: `${Math.min(1, share) * 100}%` }} />
      <small>{percentText(share)}</small>
    </span>
  );
}

/** What a landing is: its name, its item, how full it is, and how its contacts are made. */
export function HousingTitle({ housing }: { readonly housing: Housing }) {
  const words = useWords().wiring;
  const pick = usePick();
  const used = housing.cavities.filter((cavity) => cavity.wires.length > 0).length;
  const facts = [
    housing.isHousing ? words.loaded(used, housing.ways) : words.terminals(housing.cavities.length),
    housing.housingPartId === null ? "" : `${words.housing} ${housing.housingPartId}`,
    pick(housing.family.en, housing.family.zh),
    housing.stripMm === null ? "" : words.strip(mmText(housing.stripMm)),
    housing.tool === "" ? "" : `${words.tool}: ${housing.tool}`,
  ];
  return (
    <>
      <h3>
        {housing.landingId}{" "}
        <span className="dim">
          {[pick(housing.item.en, housing.item.zh), housing.label].filter(Boolean).join(" · ")}
        </span>
      </h3>
      <p className="dim">{facts.filter(Boolean).join(" · ")}</p>
    </>
  );
}

/** How a housing has to be looked at. */
export function EntrySideNote({ housings }: { readonly housings: readonly Housing[] }) {
  const words = useWords().wiring;
  if (!housings.some((housing) => housing.isHousing)) return null;
  const hasHalfB = housings.some((housing) => housing.half === "b");
  return (
    <p className="dim">
      {words.entrySide} {hasHalfB && words.halfB}
    </p>
  );
}
