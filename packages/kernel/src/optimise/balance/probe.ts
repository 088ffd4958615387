import { type Line, mirrored } from "./line.ts";
import { type Measure, stationsByMeasures, strongMeasures } from "./measure.ts";
import { type Answer, LoadSearch, type Question } from "./search.ts";
import { windowsOf } from "./windows.ts";

/** Measures beside the times themselves that a search watches. */
const MEASURES = 8;

/** Bounds under one takt. */
export class TaktBounds {
  readonly line: Line;
  readonly takt: number;
  private readonly measures: readonly Measure[];
  private readonly stations: number;

  constructor(line: Line, takt: number) {
    this.line = line;
    this.takt = takt;
    this.measures = strongMeasures(line, takt, MEASURES);
    this.stations = stationsByMeasures(this.measures);
  }

  /** The question whether so many stations do, made ready; `null` when a bound already says no. */
  question(stations: number): Question | null {
    const { line, takt, measures } = this;
    if (stations < this.stations || line.time.some((t) => t > takt)) return null;
    const windows = windowsOf(line, takt, stations, measures);
    return windows === null ? null : { line, takt, stations, measures, windows };
  }
}

/** Steps of the first turn of each direction; each later turn is twice as long. */
const TURN = 4000;

/** Answers a question from both ends of the line by turns; can be run on and on. */
export class Probe {
  private readonly searches: readonly LoadSearch[];
  private readonly stations: number;
  private turn = 0;

  constructor(question: Question) {
    const { line, stations, windows } = question;
    const flip = (s: number): number => stations - 1 - s;
    const back: Question = {
      ...question,
      line: mirrored(line, stations),
      windows: { first: windows.last.map(flip), last: windows.first.map(flip) },
    };
    this.stations = stations;
    this.searches = [new LoadSearch(question), new LoadSearch(back)];
  }

  get steps(): number {
    return this.searches.reduce((sum, search) => sum + search.steps, 0);
  }

  /** Searches on for about so many steps. */
  run(steps: number): Answer {
    const stop = this.steps + steps;
    while (this.steps < stop) {
      const backwards = this.turn % 2;
      const length = TURN * 2 ** Math.floor(this.turn / 2);
      this.turn++;
      const answer = this.searches[backwards]?.run(Math.min(length, stop - this.steps)) ?? "open";
      if (answer === "no") return answer;
      if (answer !== "open") return backwards ? answer.map((s) => this.stations - 1 - s) : answer;
    }
    return "open";
  }
}
