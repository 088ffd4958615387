import type { XY } from "./page.ts";

/** A flat plate with round holes, lying on z = 0. */
export interface Plate {
  readonly id: string;
  readonly label: string;
  /** Corners anticlockwise. */
  readonly outline: readonly XY[];
  readonly holes: readonly { readonly at: XY; readonly diameter: number }[];
  readonly thickness: number;
  /** Day of the file, as year-month-day. */
  readonly day: string;
}

/** A number as ISO 10303-21 writes a real: with a point. */
const real = (value: number): string => {
  const text = String(Math.round(value * 1e6) / 1e6 + 0);
  return text.includes(".") ? text : `${text}.`;
};

/** Writes instances of a data section and gives their names. */
class Data {
  readonly lines: string[] = [];

  add(entity: string): string {
    const name = `#${this.lines.length + 1}`;
    this.lines.push(`${name}=${entity};`);
    return name;
  }

  point([x, y]: XY, z: number): string {
    return this.add(`CARTESIAN_POINT('',(${real(x)},${real(y)},${real(z)}))`);
  }

  direction(x: number, y: number, z: number): string {
    return this.add(`DIRECTION('',(${real(x)},${real(y)},${real(z)}))`);
  }

  axes(origin: string, axis: string, reference: string): string {
    return this.add(`AXIS2_PLACEMENT_3D('',${origin},${axis},${reference})`);
  }

  vertex(at: XY, z: number): { readonly point: string; readonly vertex: string } {
    const point = this.point(at, z);
    return { point, vertex: this.add(`VERTEX_POINT('',${point})`) };
  }

  /** A straight edge from one vertex to another. */
  edge(
    from: { readonly point: string; readonly vertex: string },
    to: { readonly vertex: string },
    direction: string,
    length: number,
  ): string {
    const vector = this.add(`VECTOR('',${direction},${real(length)})`);
    const line = this.add(`LINE('',${from.point},${vector})`);
    return this.add(`EDGE_CURVE('',${from.vertex},${to.vertex},${line},.T.)`);
  }

  loop(edges: readonly (readonly [edge: string, forward: boolean])[]): string {
    const oriented = edges.map(([edge, forward]) =>
      this.add(`ORIENTED_EDGE('',*,*,${edge},${forward ? ".T." : ".F."})`),
    );
    return this.add(`EDGE_LOOP('',(${oriented.join(",")}))`);
  }

  face(outer: string, inner: readonly string[], surface: string, sense: boolean): string {
    const bounds = [
      this.add(`FACE_OUTER_BOUND('',${outer},.T.)`),
      ...inner.map((loop) => this.add(`FACE_BOUND('',${loop},.T.)`)),
    ];
    return this.add(`ADVANCED_FACE('',(${bounds.join(",")}),${surface},${sense ? ".T." : ".F."})`);
  }
}

/** Faces of the solid: bottom, top, a plane for each side, a cylinder for each hole. */
function faces(data: Data, { outline, holes, thickness }: Plate): readonly string[] {
  const up = data.direction(0, 0, 1);
  const down = data.direction(0, 0, -1);
  const x = data.direction(1, 0, 0);
  const low = outline.map((at) => data.vertex(at, 0));
  const high = outline.map((at) => data.vertex(at, thickness));
  const risers = low.map((from, i) => data.edge(from, high[i] ?? from, up, thickness));
  const sides = outline.map((at, i) => {
    const next = (i + 1) % outline.length;
    const to = outline[next] ?? at;
    const length = Math.hypot(to[0] - at[0], to[1] - at[1]);
    const [dx, dy] = [(to[0] - at[0]) / length, (to[1] - at[1]) / length];
    const along = data.direction(dx, dy, 0);
    const bottom = data.edge(low[i] ?? { point: "", vertex: "" }, low[next] ?? { vertex: "" }, along, length);
    const top = data.edge(high[i] ?? { point: "", vertex: "" }, high[next] ?? { vertex: "" }, along, length);
    const loop = data.loop([
      [bottom, true],
      [risers[next] ?? "", true],
      [top, false],
      [risers[i] ?? "", false],
    ]);
    const axes = data.axes(data.point(at, 0), data.direction(dy, -dx, 0), along);
    return { bottom, top, face: data.face(loop, [], data.add(`PLANE('',${axes})`), true) };
  });
  const bores = holes.map(({ at, diameter }) => {
    const rim: XY = [at[0] + diameter / 2, at[1]];
    const circle = (
      z: number,
    ): { readonly vertex: { readonly point: string; readonly vertex: string }; readonly edge: string } => {
      const vertex = data.vertex(rim, z);
      const axes = data.axes(data.point(at, z), up, x);
      const curve = data.add(`CIRCLE('',${axes},${real(diameter / 2)})`);
      return { vertex, edge: data.add(`EDGE_CURVE('',${vertex.vertex},${vertex.vertex},${curve},.T.)`) };
    };
    const [bottom, top] = [circle(0), circle(thickness)];
    const seam = data.edge(bottom.vertex, top.vertex, up, thickness);
    const loop = data.loop([
      [top.edge, true],
      [seam, false],
      [bottom.edge, false],
      [seam, true],
    ]);
    const axes = data.axes(data.point(at, 0), up, x);
    const surface = data.add(`CYLINDRICAL_SURFACE('',${axes},${real(diameter / 2)})`);
    return { bottom: bottom.edge, top: top.edge, face: data.face(loop, [], surface, false) };
  });
  const plane = (z: number, axis: string): string =>
    data.add(`PLANE('',${data.axes(data.point([0, 0], z), axis, x)})`);
  const bottomLoop = data.loop([...sides].reverse().map(({ bottom }) => [bottom, false]));
  const topLoop = data.loop(sides.map(({ top }) => [top, true]));
  return [
    data.face(
      bottomLoop,
      bores.map(({ bottom }) => data.loop([[bottom, true]])),
      plane(0, down),
      true,
    ),
    data.face(
      topLoop,
      bores.map(({ top }) => data.loop([[top, false]])),
      plane(thickness, up),
      true,
    ),
    ...sides.map(({ face }) => face),
    ...bores.map(({ face }) => face),
  ];
}

/**
 * A plate as a solid in the clear text of ISO 10303-21, by the schema AUTOMOTIVE_DESIGN (ISO 10303-214): a manifold
 * solid bounded by planes and cylinders, in mm.
 */
export function plateStep(plate: Plate): string {
  const { id, label, day } = plate;
  const data = new Data();
  const context = data.add("APPLICATION_CONTEXT('automotive_design')");
  data.add(`APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,${context})`);
  const productContext = data.add(`PRODUCT_CONTEXT('',${context},'mechanical')`);
  const product = data.add(`PRODUCT('${id}','${label}','',(${productContext}))`);
  data.add(`PRODUCT_RELATED_PRODUCT_CATEGORY('part','',(${product}))`);
  const formation = data.add(`PRODUCT_DEFINITION_FORMATION('','',${product})`);
  const definitionContext = data.add(`PRODUCT_DEFINITION_CONTEXT('part definition',${context},'design')`);
  const definition = data.add(`PRODUCT_DEFINITION('design','',${formation},${definitionContext})`);
  const shape = data.add(`PRODUCT_DEFINITION_SHAPE('','',${definition})`);
  const mm = data.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
  const radian = data.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
  const steradian = data.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
  const precision = data.add(
    `UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-5),${mm},'distance_accuracy_value','')`,
  );
  const space = data.add(
    `(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((${precision}))GLOBAL_UNIT_ASSIGNED_CONTEXT((${mm},${radian},${steradian}))REPRESENTATION_CONTEXT('',''))`,
  );
  const origin = data.axes(data.point([0, 0], 0), data.direction(0, 0, 1), data.direction(1, 0, 0));
  const shell = data.add(`CLOSED_SHELL('',(${faces(data, plate).join(",")}))`);
  const solid = data.add(`MANIFOLD_SOLID_BREP('${id}',${shell})`);
  const representation = data.add(`ADVANCED_BREP_SHAPE_REPRESENTATION('',(${origin},${solid}),${space})`);
  data.add(`SHAPE_DEFINITION_REPRESENTATION(${shape},${representation})`);
  return [
    "ISO-10303-21;",
    "HEADER;",
    `FILE_DESCRIPTION(('${label}'),'2;1');`,
    `FILE_NAME('${id}.step','${day}T00:00:00',(''),('Pinwright examples'),'','','');`,
    "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));",
    "ENDSEC;",
    "DATA;",
    ...data.lines,
    "ENDSEC;",
    "END-ISO-10303-21;",
    "",
  ].join("\n");
}
