import { useSpeech } from "../../app/words.tsx";
import { useDevice, useOwnFacts } from "../device.tsx";
import { clockTime, FloorHead } from "../shell/head.tsx";

/** Facts that are listed; what came before is counted. */
const MOST = 200;

/** What this device recorded: what waits, what is at the server, what does not count and why. */
export function OutboxPage() {
  const { words, language } = useSpeech();
  const own = words.floor.outbox;
  const { sending, awaySince, sendNow } = useDevice();
  const facts = useOwnFacts();
  const toSend = facts.filter(({ sentAt }) => sentAt === null);
  const waiting = toSend.length;
  const first = toSend[0]?.fact.at;
  const net = words.floorBench.net;
  const aside = facts.filter(({ why }) => why !== null).length;
  const last = facts.at(-1)?.fact;
  const clock = new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
    dateStyle: "short",
    timeStyle: "medium",
  });
  return (
    <main className="floor-page">
      <FloorHead back="/floor">
        <h1>{own.title}</h1>
      </FloorHead>
      <div className="floor-body">
        {awaySince !== null && (
          <p className="floor-away" role="status">
            {net.offline(clockTime(awaySince, language))}
          </p>
        )}
        {first !== undefined && (
          <p className="amber-text">
            {net.waits(waiting, clock.format(new Date(first)))}. {net.safe}
          </p>
        )}
        {last === undefined ? (
          <p>{own.none}</p>
        ) : (
          <>
            <p>
              {own.waiting(waiting)}
              {sending.state === "refused" && <span className="error-text"> {sending.message}</span>}
              {waiting > 0 && (
                <button type="button" className="floor-plain" onClick={sendNow}>
                  {own.sendNow}
                </button>
              )}
            </p>
            {aside > 0 && <p className="error-text">{own.asideTitle(aside)}</p>}
            <p className="dim floor-stream">
              {own.stream}: {last.stream} · {last.seq} · {last.hash}
            </p>
            <ol className="floor-facts" reversed start={last.seq}>
              {facts
                .slice(-MOST)
                .reverse()
                .map(({ fact, sentAt, why }) => (
                  <li key={fact.hash}>
                    <b>{own.facts[fact.body.kind]}</b> {"unit" in fact.body ? fact.body.unit : ""}
                    <small>
                      {clock.format(new Date(fact.at))} ·{" "}
                      {why === null ? (sentAt === null ? own.here : own.sent) : own.aside[why]}
                    </small>
                  </li>
                ))}
            </ol>
          </>
        )}
      </div>
    </main>
  );
}
