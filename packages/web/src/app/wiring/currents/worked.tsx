import type { WorkedOhm } from "@pinwright/engine";
import { type ReactNode, useState } from "react";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { WiringLink } from "../links.tsx";
import { ampsText, cornerText, figure, ohmText, percentText, voltsText } from "./figures.ts";
import "./tables.css";

type Step = ViewEntry<"electricWorkedLoad">["forth"][number];

/** Units that are laid out by themselves; the others are in one row. */
const MOST_UNITS = 40;

/** A part of a page that is worked out only when it is asked for. */
export function OnDemand({
  label,
  children,
}: {
  readonly label: string;
  readonly children: () => ReactNode;
}) {
  const [open, setOpen] = useState(false);
  return (
    <div>
      <button type="button" className="on-demand" aria-expanded={open} onClick={() => setOpen(!open)}>
        {label}
      </button>
      {open && children()}
    </div>
  );
}

/** How a conductor's largest and rms current come about, unit by unit. */
export function WorkedCurrentTable({ partId }: { readonly partId: string }) {
  const { electric, common } = useWords();
  const { worked: words } = electric;
  const pick = usePick();
  const found = useView("electricWorkedCurrent", partId);
  const current = found?.get("");
  if (found === null) return <p className="dim">{common.loading}</p>;
  if (current === undefined) return <p>{words.nothing}</p>;
  const { units, steadyA, superposedA, solvedA, rmsA, resistance, dropV } = current;
  const shown = units.slice(0, MOST_UNITS);
  const on = units.filter((unit) => unit.inMoment);
  return (
    <div className="plain-scroll">
      <table className="plain calc">
        <caption>
          {words.units} <small>{cornerText(electric, current.corner)}</small>
        </caption>
        <thead>
          <tr>
            {[words.unit, words.inMoment].map((text) => (
              <th key={text} scope="col">
                {text}
              </th>
            ))}
            {[words.alone, words.pulseShare, words.holdShare, words.mean, words.meanSquare].map((text) => (
              <th key={text} scope="col" className="end">
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{words.always}</th>
            <td>{words.yes}</td>
            <td className="end">{ampsText(steadyA)}</td>
            <td className="end">{percentText(1)}</td>
            <td />
            <td className="end">{ampsText(steadyA)}</td>
            <td />
          </tr>
          {shown.map(({ loadIds, items, inMoment, aloneA, usage, meanA, meanSquareA2 }) => (
            <tr key={loadIds.join(" ")}>
              <th scope="row">{items.map(({ id, label }) => pick(label.en, label.zh) || id).join(", ")}</th>
              <td>{inMoment ? words.yes : ""}</td>
              <td className="end">{ampsText(aloneA)}</td>
              <td className="end">{percentText(usage.pulseShare)}</td>
              <td className="end">
                {usage.holdShare === 0
                  ? ""
                  : `${percentText(usage.holdShare)} × ${percentText(usage.holdDuty)}`}
              </td>
              <td className="end">{ampsText(meanA)}</td>
              <td className="end">{figure(meanSquareA2)} A²</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul className="worked-sums">
        {units.length > shown.length && <li>{words.more(units.length - shown.length)}</li>}
        <li>
          {words.sum}:{" "}
          {[steadyA, ...on.map((unit) => unit.aloneA)]
            .slice(0, 12)
            .map((a) => ampsText(a))
            .join(" + ")}
          {on.length > 11 && " + …"} = <b>{ampsText(superposedA)}</b>; {words.solved}{" "}
          <b>{ampsText(solvedA)}</b>
        </li>
        <li>
          {words.rms}: √(({words.steady} + Σ {words.mean})² + Σ ({words.meanSquare} − {words.mean}²)) ={" "}
          <b>{ampsText(rmsA)}</b>
        </li>
        <li>
          {words.drop}: {ampsText(solvedA)} × {ohmText(resistance.ohm)} (<OhmText resistance={resistance} />)
          = <b>{voltsText(dropV)}</b>
        </li>
      </ul>
    </div>
  );
}

/** What a resistance is found from. */
function OhmText({ resistance }: { readonly resistance: WorkedOhm }) {
  const { worked: words } = useWords().electric;
  switch (resistance.kind) {
    case "wire":
      return words.wireOhm(
        figure(resistance.lengthMm),
        figure(resistance.areaMm2),
        String(resistance.strandLay),
        String(resistance.celsius),
      );
    case "contact":
      return words.contactOhm(ohmText(resistance.newOhm), figure(resistance.wear));
    case "element":
      return words.elementOhm;
  }
}

/** How a load's volts come about: every part from the source and back, with its current and drop. */
export function WorkedLoadTable({ loadId }: { readonly loadId: string }) {
  const { electric, common } = useWords();
  const { worked: words } = electric;
  const found = useView("electricWorkedLoad", loadId);
  const load = found?.get("");
  if (found === null) return <p className="dim">{common.loading}</p>;
  if (load === undefined) return <p>{words.nothing}</p>;
  const { sourceId, sourceV, forth, back, loadV, loadA, residualV } = load;
  return (
    <div className="plain-scroll">
      <table className="plain calc">
        <caption>
          {words.steps} <small>{cornerText(electric, load.corner)}</small>
        </caption>
        <thead>
          <tr>
            <th scope="col">{electric.col.what}</th>
            {[electric.col.ohm, electric.col.amps, electric.col.drop, electric.col.volts].map((text) => (
              <th key={text} scope="col" className="end">
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{sourceId}</th>
            <td />
            <td />
            <td />
            <td className="end">
              <b>{voltsText(sourceV)}</b>
            </td>
          </tr>
          {forth.map((step) => (
            <StepRow key={`forth ${step.partId}`} step={step} />
          ))}
          <tr>
            <th scope="row">
              <b>{loadId}</b>
            </th>
            <td />
            <td className="end">{ampsText(loadA)}</td>
            <td className="end">
              <b>{voltsText(loadV)}</b>
            </td>
            <td />
          </tr>
          {back.map((step) => (
            <StepRow key={`back ${step.partId}`} step={step} />
          ))}
        </tbody>
      </table>
      <p>
        {words.residual}: <b>{voltsText(residualV)}</b>
      </p>
    </div>
  );
}

function StepRow({ step: { kind, partId, name, resistance, amps, dropV, volts } }: { readonly step: Step }) {
  const { electric } = useWords();
  const isShown = kind === "wire" || kind === "contact";
  return (
    <tr>
      <th scope="row">
        {isShown ? (
          <>
            {electric.kinds[kind]} <WiringLink id={partId} text={name} />
          </>
        ) : (
          name
        )}
      </th>
      <td className="end">{ohmText(resistance.ohm)}</td>
      <td className="end">{amps === null ? "–" : ampsText(amps)}</td>
      <td className="end">{voltsText(dropV)}</td>
      <td className="end">{voltsText(volts)}</td>
    </tr>
  );
}
