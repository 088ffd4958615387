import type { Spread } from "@pinwright/engine";
import { useWords } from "../../words.tsx";
import { cornerText, type FigureText, spreadText } from "./figures.ts";
import "./tables.css";

/** A quantity with its corners. */
export interface Cornered {
  readonly name: string;
  readonly spread: Spread;
  readonly text: FigureText;
}

/** Nominal, least and most of some quantities, and the corners where those are. */
export function CornerTable({
  caption,
  rows,
}: {
  readonly caption: string;
  readonly rows: readonly Cornered[];
}) {
  const words = useWords().electric;
  return (
    <div className="plain-scroll">
      <table className="plain corners">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.quantity}</th>
            <th scope="col" className="end">
              {words.nominal}
            </th>
            <th scope="col" className="end">
              {words.least}
            </th>
            <th scope="col">{words.at}</th>
            <th scope="col" className="end">
              {words.most}
            </th>
            <th scope="col">{words.at}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, spread, text }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="end">{text(spread.nominal)}</td>
              <td className="end">
                <b>{text(spread.least)}</b>
              </td>
              <td className="dim">{cornerText(words, spread.leastAt)}</td>
              <td className="end">
                <b>{text(spread.most)}</b>
              </td>
              <td className="dim">{cornerText(words, spread.mostAt)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The worst of a quantity, the nominal value below it, and all corners while it is pointed at. */
export function WorstOf({
  spread,
  text,
  worst = "most",
}: {
  readonly spread: Spread;
  readonly text: FigureText;
  readonly worst?: "least" | "most";
}) {
  const words = useWords().electric;
  const value = text(spread[worst]);
  const nominal = text(spread.nominal);
  return (
    <span className="worst" title={spreadText(words, spread, text)}>
      {value}
      {nominal !== value && (
        <small>
          {words.nominalShort} {nominal}
        </small>
      )}
    </span>
  );
}
