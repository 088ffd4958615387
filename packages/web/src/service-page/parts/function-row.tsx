import type { Seen } from "@pinwright/engine";
import { useFaults } from "../host.ts";
import type { NamedFunction } from "../names.ts";

const SAYS = ["works", "dead", "on", "mixed", "sometimes"] as const satisfies readonly Seen[];

/** One function with what it does: the two usual answers as buttons, the others in a list. */
export function FunctionRow({
  one,
  seen,
  say,
}: {
  readonly one: NamedFunction;
  readonly seen: Seen | null;
  readonly say: (seen: Readonly<Record<string, Seen | null>>) => void;
}) {
  const { words } = useFaults();
  const isOther = seen !== null && seen !== "works" && seen !== "dead";
  return (
    <li className="ff-row" data-seen={seen ?? "none"}>
      <span className="ff-name">{one.name}</span>
      <span className="ff-says">
        {(["works", "dead"] as const).map((what) => (
          <button
            key={what}
            type="button"
            data-says={what}
            aria-pressed={seen === what}
            aria-label={`${one.name}: ${words.says[what]}`}
            onClick={() => say({ [one.id]: seen === what ? null : what })}
          >
            {what === "works" ? "✓" : "✗"}
          </button>
        ))}
        <select
          aria-label={words.more(one.name)}
          data-other={isOther}
          value={seen ?? ""}
          onChange={(event) => say({ [one.id]: SAYS.find((what) => what === event.target.value) ?? null })}
        >
          <option value="">{words.unsaid}</option>
          {SAYS.map((what) => (
            <option key={what} value={what}>
              {words.says[what]}
            </option>
          ))}
        </select>
      </span>
    </li>
  );
}
