/** Sets of done tasks met by a search, each with the station that it reached and where it came from. */
export class States {
  count = 0;
  private readonly words: number;
  private sets: Int32Array;
  private parents: Int32Array;
  private stations: Int32Array;
  private table: Int32Array;

  constructor(words: number) {
    this.words = words;
    this.sets = new Int32Array(1024 * words);
    this.parents = new Int32Array(1024);
    this.stations = new Int32Array(1024);
    this.table = new Int32Array(4096).fill(-1);
  }

  /** All sets; that of state x begins at word `x · words`. */
  get bits(): Int32Array {
    return this.sets;
  }

  parentOf(x: number): number {
    return this.parents[x] ?? -1;
  }

  /** Stations filled. */
  stationsOf(x: number): number {
    const stations = this.stations[x] ?? -1;
    return stations < 0 ? ~stations : stations;
  }

  /** False for a set that was reached with fewer stations later. */
  isBest(x: number): boolean {
    return (this.stations[x] ?? -1) >= 0;
  }

  /** Adds a set reached from `parent` with so many stations filled; −1 when it is known with as few. */
  add(set: Int32Array, parent: number, stations: number): number {
    const { words } = this;
    if (2 * (this.count + 1) > this.table.length) this.widen();
    let place = this.placeOf(set, 0);
    const known = this.table[place] ?? -1;
    if (known >= 0) {
      if (this.stationsOf(known) <= stations) return -1;
      this.stations[known] = ~this.stationsOf(known);
    }
    const x = this.count++;
    if (x >= this.parents.length) this.grow();
    this.sets.set(set, x * words);
    this.parents[x] = parent;
    this.stations[x] = stations;
    place = this.placeOf(set, 0);
    this.table[place] = x;
    return x;
  }

  private placeOf(sets: Int32Array, at: number): number {
    const { words, table } = this;
    let hash = 0x9e3779b9;
    for (let w = 0; w < words; w++) hash = Math.imul(hash ^ (sets[at + w] ?? 0), 0x85ebca6b) ^ (hash >>> 15);
    hash ^= hash >>> 13;
    const mask = table.length - 1;
    let place = hash & mask;
    for (let x = table[place] ?? -1; x >= 0; x = table[place] ?? -1) {
      if (this.equals(x, sets, at)) break;
      place = (place + 1) & mask;
    }
    return place;
  }

  private equals(x: number, sets: Int32Array, at: number): boolean {
    const { words } = this;
    for (let w = 0; w < words; w++) if (this.sets[x * words + w] !== sets[at + w]) return false;
    return true;
  }

  private grow(): void {
    const double = (old: Int32Array): Int32Array => {
      const array = new Int32Array(2 * old.length);
      array.set(old);
      return array;
    };
    this.sets = double(this.sets);
    this.parents = double(this.parents);
    this.stations = double(this.stations);
  }

  private widen(): void {
    this.table = new Int32Array(2 * this.table.length).fill(-1);
    for (let x = 0; x < this.count; x++) {
      if (this.isBest(x)) this.table[this.placeOf(this.sets, x * this.words)] = x;
    }
  }
}
