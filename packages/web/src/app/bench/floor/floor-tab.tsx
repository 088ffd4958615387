import { Button, NativeSelect } from "@mantine/core";
import { IconMaximize } from "@tabler/icons-react";
import { Link, useSearchParams } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { benchAddress } from "../address.ts";
import { FloorScreen } from "./floor-screen.tsx";
import { RunFloor } from "./run-floor.tsx";
import { useClockText } from "./use-clock-text.ts";
import { useFloor } from "./use-floor.ts";
import "./floor-page.css";

const QUIETS = [4, 8, 24, 72] as const;
const USUAL_QUIET = 24;

/** How each run stands now: in the app with links, or on a screen of its own for the whole floor. */
export default function FloorTab() {
  const { benchFloor: own } = useWords();
  const { bookId } = useDesk();
  const clock = useClockText();
  const [params, setParams] = useSearchParams();
  const quiet = QUIETS.find((one) => String(one) === params.get("quiet")) ?? USUAL_QUIET;
  const looked = useFloor(quiet);
  const { floor, boards, failed, heardMs, isCurrent } = looked;
  if (params.get("screen") === "1")
    return (
      <FloorScreen
        looked={looked}
        leave={() =>
          setParams(
            (before) => {
              const next = new URLSearchParams(before);
              next.delete("screen");
              return next;
            },
            { replace: true },
          )
        }
      />
    );
  return (
    <div className="currents-body floor-now">
      <h2>{own.title}</h2>
      {floor !== undefined && (
        <p role="status" className={isCurrent ? "dim" : "floor-stale"}>
          {isCurrent ? `${own.live}, ${own.asOf(clock(heardMs))}` : own.notCurrent(clock(heardMs))}
          {" · "}
          {own.defectsToday(floor.today.defects)}
        </p>
      )}
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
      <div className="quality-fields">
        <NativeSelect
          label={own.quietAfter}
          value={String(quiet)}
          data={QUIETS.map((hours) => ({ value: String(hours), label: own.hours(hours) }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setParams(
              (before) => {
                const next = new URLSearchParams(before);
                next.set("quiet", value);
                return next;
              },
              { replace: true },
            );
          }}
        />
        <Button
          component={Link}
          href={benchAddress(bookId, "floor", { quiet: String(quiet), screen: "1" })}
          variant="default"
          leftSection={<IconMaximize size={16} />}
        >
          {own.screen}
        </Button>
      </div>
      {floor !== undefined && boards.length === 0 && (
        <p>
          {own.empty} {own.emptyHow}
        </p>
      )}
      {boards.map((board) => (
        <RunFloor key={board.run} board={board} nowMs={looked.nowMs} />
      ))}
    </div>
  );
}
