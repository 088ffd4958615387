import { Button } from "@mantine/core";
import { IconRubberStamp } from "@tabler/icons-react";
import { useState } from "react";
import { useMay } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { useReleaseJob, useReleases } from "../use-releases.ts";
import { ReleaseCard } from "./release-card.tsx";
import { ReleaseDialog } from "./release-dialog.tsx";
import { useBuilt } from "./use-built.ts";
import "./releases.css";

/** Everything that was released, the newest first, and releasing. */
export default function ReleasesTab() {
  const words = useWords();
  const own = words.revisionsApp.list;
  const { releases, failed } = useReleases();
  const making = useReleaseJob();
  const trouble = useTrouble();
  const mayRelease = useMay("designer");
  const built = useBuilt();
  const [open, setOpen] = useState(false);
  if (releases === null)
    return failed === null ? (
      <p className="page dim">{words.common.loading}</p>
    ) : (
      <p className="page error-text">{trouble(failed)}</p>
    );
  return (
    <div className="currents-body">
      <div className="releases-head">
        <h2>{own.title}</h2>
        {mayRelease ? (
          <Button leftSection={<IconRubberStamp size={18} aria-hidden />} onClick={() => setOpen(true)}>
            {own.make}
          </Button>
        ) : (
          <span className="dim">{own.asDesigner}</span>
        )}
      </div>
      <p className="dim">{own.about}</p>
      {releases.length === 0 && <p>{own.none}</p>}
      <ol className="releases">
        {releases.map((release, i) => (
          <li key={release.name}>
            <ReleaseCard
              release={release}
              before={releases[i + 1]?.name ?? null}
              isNewest={i === 0}
              built={built.get(release.name) ?? []}
            />
          </li>
        ))}
      </ol>
      {open && <ReleaseDialog releases={releases} making={making} close={() => setOpen(false)} />}
    </div>
  );
}
