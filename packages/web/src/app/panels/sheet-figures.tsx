import { useWords } from "../words.tsx";
import { offcutsOf } from "./cut-rows.ts";
import type { Cutting } from "./use-cutting.ts";

/** Sheets and settings against what no plan can do without, how much becomes panel, and what is kept. */
export function SheetFigures({ cutting }: { readonly cutting: Cutting }) {
  const words = useWords().panels;
  const offcuts = offcutsOf(cutting);
  const figure = (name: string, value: string, note: string) => (
    <div>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b>
        <span className="dim">{note}</span>
      </dd>
    </div>
  );
  const { sheetsForMates, splitSettings } = cutting;
  const { newSheets, fewestNewSheets, offcutSheets, setups, fewestSetups, settings, fewestSettings } =
    cutting;
  const pct = cutting.sheetAreaM2 === 0 ? 0 : (100 * cutting.usedAreaM2) / cutting.sheetAreaM2;
  return (
    <>
      <dl className="plan-figures">
        {figure(
          words.sheets,
          words.sheetCount(newSheets, offcutSheets),
          newSheets - sheetsForMates <= fewestNewSheets
            ? words.proven(fewestNewSheets)
            : words.gap(fewestNewSheets),
        )}
        {figure(
          words.differentSettings,
          String(settings.length),
          settings.length <= fewestSettings ? words.leastSettingsMet : words.leastSettings(fewestSettings),
        )}
        {figure(
          words.setups,
          String(setups.length),
          setups.length <= fewestSetups ? words.leastSetupsMet : words.leastSetups(fewestSetups),
        )}
        {figure(words.sawTime, words.minutes(cutting.sawMinutes), words.cutCount(cutting.cutCount))}
        {figure(words.used, words.usedPct(pct), words.usedSays)}
        <div>
          <dt>{words.offcuts}</dt>
          <dd>
            {offcuts.length === 0 ? (
              <span className="dim">{words.noOffcuts}</span>
            ) : (
              <ul className="offcut-list">
                {offcuts.map((one) => (
                  <li key={`${one.stockId} ${one.lengthMm} ${one.widthMm}`}>
                    {words.offcutOf(one.count, one.lengthMm, one.widthMm)}
                  </li>
                ))}
              </ul>
            )}
          </dd>
        </div>
      </dl>
      {sheetsForMates > 0 && <p className="mates-note">{words.forMates(sheetsForMates)}</p>}
      {splitSettings.length > 0 && (
        <p className="mates-note amber-text">{words.split(splitSettings.join(", "))}</p>
      )}
    </>
  );
}
