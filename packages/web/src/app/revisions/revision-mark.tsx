import { useSyncExternalStore } from "react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { revisionsAddress } from "./address.ts";
import { useReleases } from "./use-releases.ts";

/** Which revision is on the screen: a draft after the newest release, or just that release. */
export function RevisionMark() {
  const { bar } = useWords().revisionsApp;
  const desk = useDesk();
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const { releases } = useReleases();
  const newest = releases?.[0];
  if (releases === null || changeNo === 0) return null;
  const text =
    newest === undefined
      ? bar.draft
      : newest.changeNo === changeNo
        ? bar.same(newest.name)
        : bar.after(newest.name);
  return (
    <Link href={revisionsAddress(desk.bookId, "releases")} className="revision-mark" title={bar.hint}>
      {text}
    </Link>
  );
}
