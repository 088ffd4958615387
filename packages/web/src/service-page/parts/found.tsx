import { type Cause, type FaultAnswer, fileSuspectId } from "@pinwright/engine";
import { useFaults } from "../host.ts";
import { percentText } from "../likely.ts";
import { isLicensed } from "../suspects.ts";
import { FunctionNames, SuspectName } from "./causes.tsx";
import { SpotPictures } from "./spots.tsx";

/** Suspects that are named to be mended; the odds of the others are small. */
const MOST_NAMED = 4;
/** What is less likely than this beside the first is not worth a name. */
const LEAST_SHARE = 0.1;

type Mended = (suspect: string, helped: boolean) => void;

/** The end: what is to be mended, and how to see that it is. */
export function Found({ answer, mended }: { readonly answer: FaultAnswer; readonly mended: Mended }) {
  const { words } = useFaults();
  const cause = answer.causes[0];
  if (cause === undefined) return null;
  const isOne = cause.parts.length === 1 && (cause.parts[0]?.[0]?.probability ?? 0) > 0.7;
  return (
    <section className="ff-section ff-found" id="ff-next" aria-labelledby="ff-found-title">
      <h2 id="ff-found-title">{words.found}</h2>
      <p>{isOne ? words.foundHelp : words.foundMany}</p>
      {cause.parts.map((part, n) => (
        <div key={part[0]?.suspect ?? n}>
          {part
            .filter(({ probability }) => probability >= LEAST_SHARE * (part[0]?.probability ?? 0))
            .slice(0, MOST_NAMED)
            .map(({ suspect, probability }) => (
              <MendCard
                key={suspect}
                suspect={suspect}
                probability={probability}
                cause={cause}
                mended={mended}
              />
            ))}
        </div>
      ))}
    </section>
  );
}

function MendCard({
  suspect,
  probability,
  cause,
  mended,
}: {
  readonly suspect: number;
  readonly probability: number;
  readonly cause: Cause;
  readonly mended: Mended;
}) {
  const { file, words, names } = useFaults();
  const kind = file.suspects[suspect]?.[0];
  const id = fileSuspectId(file, suspect);
  return (
    <div className="ff-card">
      <h3>
        <SuspectName suspect={suspect} /> <small>{percentText(probability)}</small>
      </h3>
      {isLicensed(file, suspect) && <p className="ff-caution">{words.licensed}</p>}
      <p>
        <strong>{words.mend}:</strong> {kind === undefined ? "" : words.mends[kind]}
      </p>
      <p className="ff-caution">{words.cautionFirst}</p>
      <FunctionNames text={words.after} all={[...cause.explains, ...cause.alsoBreaks]} />
      <div className="ff-answers">
        <button type="button" className="ff-main" onClick={() => mended(id, true)}>
          {words.helped}
        </button>
        <button type="button" onClick={() => mended(id, false)}>
          {words.inVain}
        </button>
      </div>
      <SpotPictures spots={names.suspectSpots(suspect)} />
    </div>
  );
}

/** After something was mended: whether it accounts for everything. */
export function Mended({ rest, goOn }: { readonly rest: readonly number[]; readonly goOn: () => void }) {
  const { words } = useFaults();
  return (
    <section className="ff-section ff-found" id="ff-next" aria-labelledby="ff-found-title">
      <h2 id="ff-found-title">{words.mended}</h2>
      {rest.length > 0 ? <FunctionNames text={words.mendedRest} all={rest} /> : <p>{words.mendedDone}</p>}
      <button type="button" onClick={goOn}>
        {words.goOn}
      </button>
    </section>
  );
}
