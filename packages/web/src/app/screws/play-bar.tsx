import { ActionIcon, NativeSelect } from "@mantine/core";
import {
  IconPlayerPause,
  IconPlayerPlay,
  IconPlayerSkipBack,
  IconPlayerSkipForward,
} from "@tabler/icons-react";
import type { ReactNode } from "react";
import { useWords } from "../words.tsx";
import { type Play, SPEEDS } from "./use-play.ts";

/** Plays the order of assembly through: step by step, at a speed, or drawn to a step. */
export function PlayBar({
  play,
  index,
  count,
  title,
}: {
  readonly play: Play;
  readonly index: number;
  readonly count: number;
  /** What the step is called, for whoever hears the slider. */
  readonly title: string;
}) {
  const words = useWords().screws;
  const button = (label: string, icon: ReactNode, onClick: () => void, disabled: boolean) => (
    <ActionIcon
      variant="default"
      className="tool-button"
      aria-label={label}
      title={label}
      onClick={onClick}
      disabled={disabled}
    >
      {icon}
    </ActionIcon>
  );
  return (
    <fieldset className="play-bar" aria-label={words.play.title}>
      {button(words.play.back, <IconPlayerSkipBack size={18} />, () => play.to(index - 1), index <= 0)}
      {button(
        play.playing ? words.play.pause : words.play.start,
        play.playing ? <IconPlayerPause size={18} /> : <IconPlayerPlay size={18} />,
        play.toggle,
        count === 0,
      )}
      {button(
        words.play.forward,
        <IconPlayerSkipForward size={18} />,
        () => play.to(index + 1),
        index >= count - 1,
      )}
      <input
        type="range"
        min={1}
        max={Math.max(count, 1)}
        value={index + 1}
        aria-label={words.play.slider}
        aria-valuetext={words.stepOf(index + 1, count, title)}
        onChange={(event) => play.to(Number(event.currentTarget.value) - 1)}
      />
      <span className="play-count">{words.count(index + 1, count)}</span>
      <NativeSelect
        aria-label={words.play.speed}
        title={words.play.speed}
        size="sm"
        value={String(play.speed)}
        onChange={(event) => {
          const wanted = Number(event.currentTarget.value);
          play.setSpeed(SPEEDS.find((one) => one === wanted) ?? 1);
        }}
        data={SPEEDS.map((one) => ({ value: String(one), label: words.play.times(one) }))}
      />
    </fieldset>
  );
}
