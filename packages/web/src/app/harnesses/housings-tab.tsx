import { useState } from "react";
import { useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { EntrySideNote, HousingTitle, HousingView } from "../wiring/housing-view.tsx";
import { useWords } from "../words.tsx";

/** How every housing of a harness is loaded, from the side where the wires enter. */
export function HousingsTab({ harnessId }: { readonly harnessId: string }) {
  const { common } = useWords();
  const { bookId } = useDesk();
  const [, go] = useLocation();
  const [over, setOver] = useState<string | null>(null);
  const housings = useView("housings", { of: "harness", id: harnessId });
  if (housings === null) return <p className="dim">{common.loading}</p>;
  const list = [...housings.values()].toSorted((a, b) => Number(b.isHousing) - Number(a.isHousing));
  return (
    <>
      <EntrySideNote housings={list} />
      <div className="housings">
        {list.map((housing) => (
          <section key={housing.landingId} className="landing">
            <HousingTitle housing={housing} />
            <HousingView
              housing={housing}
              lit={{ pointId: null, wireId: over }}
              onHover={setOver}
              onPoint={(cavity) =>
                go(addressOf(bookId, { kind: "wire", id: cavity.wires[0]?.id ?? cavity.pointId }))
              }
            />
          </section>
        ))}
      </div>
    </>
  );
}
