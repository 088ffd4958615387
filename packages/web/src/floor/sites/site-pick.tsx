import { useView } from "../../app/book/desk.tsx";
import { usePick } from "../../app/words.tsx";

/** Says what a workshop is called. */
export function useSiteName(): (id: string) => string {
  const pick = usePick();
  const sites = useView("floorSites", null);
  return (id) => {
    const site = sites?.get(id);
    return site === undefined ? id : pick(site.label, site.labelZh) || id;
  };
}

export function SitePick({
  ids,
  chosen,
  choose,
}: {
  readonly ids: readonly string[];
  readonly chosen: string | null;
  readonly choose: (id: string) => void;
}) {
  const nameOf = useSiteName();
  return (
    <div className="floor-tiles floor-small-tiles">
      {ids.map((id) => (
        <button key={id} type="button" aria-pressed={id === chosen} onClick={() => choose(id)}>
          {nameOf(id)}
        </button>
      ))}
    </div>
  );
}
