import type { FenceSetup } from "@pinwright/engine";
import { useWords } from "../words.tsx";

/** Every setting of the fence in the order of the work, in large figures, with the cuts that are made at it. */
export function SetupList({
  setups,
  chosen,
  choose,
}: {
  readonly setups: readonly FenceSetup[];
  readonly chosen: number | null;
  readonly choose: (setup: FenceSetup | null) => void;
}) {
  const words = useWords().panels;
  return (
    <ol className="setup-list">
      {setups.map((setup) => {
        const { number, fenceMm, settings, work, cutCount } = setup;
        return (
          <li key={number}>
            <button
              type="button"
              aria-pressed={number === chosen}
              onClick={() => choose(number === chosen ? null : setup)}
            >
              <span className="setup-number">{number}</span>
              <b>
                {words.fenceAt(fenceMm)}
                <small> mm</small>
              </b>
              {settings.length > 0 && <span className="setup-names">{settings.join(", ")}</span>}
              <span className="setup-work">
                {words.cutCount(cutCount)}
                {work.map(({ sheet, copies, cuts }) => (
                  <span key={sheet}>{words.setupWork(sheet + 1, copies, cuts)}</span>
                ))}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
