type Words = (...found: readonly string[]) => string;

/** English sentences of the reader of books by their patterns, and the same in Chinese. The first that fits counts. */
const DETAILS: readonly (readonly [RegExp, Words])[] = [
  [/from (\S+) to (\S+)$/u, (least, most) => `${least} 至 ${most}`],
  [/(\S+) or more, the thinnest bundle$/u, (least) => `至少 ${least}，即最细的线束`],
  [/(\S+) or less, the upper limit$/u, (most) => `至多 ${most}，即上限`],
  [/(\S+) or more, the lower limit$/u, (least) => `至少 ${least}，即下限`],
  [/^blank, because it has a host/u, () => "已填主机，此处应空白"],
  [/^blank, because it has no host/u, () => "没有主机时应空白；或填写主机"],
  [/^the TCP port at the host/u, () => "该主机的 TCP 端口"],
  [/^a host, or a device file/u, () => "主机，或 `device` 中的设备文件"],
  [/^one question such as (`[^`]+`)/u, (query) => `一条查询命令，如 ${query}，不带分号`],
  [/(\S+) or more, the least value$/u, (least) => `至少 ${least}，即最小值`],
  [/^an instrument of the kind `scpi`/u, () => "使用 `scpi` 的仪器；这一台是通断测试仪"],
  [
    /^a test of the kind `sequence`; this one is (`\S+`)/u,
    (kind) => `\`sequence\` 类的测试；这一项是 ${kind}`,
  ],
  [/^more than (\S+), so that/u, (last) => `大于 ${last}：先测接地和绝缘，再通电`],
  [/(\S+) or more$/u, (least) => `至少 ${least}`],
  [/(\S+) or less$/u, (most) => `至多 ${most}`],
  [/^one of: (.*)$/u, (words) => words?.replaceAll(", ", "、") ?? ""],
  [/^one of the (.*)$/u, (words) => `应为其中之一：${words}`],
  [/^an id of (`\w+`)$/u, (table) => `表 ${table} 中的标识`],
  [/^an id of (`\S+`)/u, (table) => `表 ${table} 中的标识`],
  [/^an id that (`\S+`) has no more/u, (table) => `表 ${table} 中已不存在的标识；仍有一行使用它`],
  [/^a cavity that is not blocked/u, () => "未堵塞的孔位；`pins` 说这是防错位"],
  [/^a value, because the scope is (`\S+`)/u, (scope) => `范围为 ${scope} 时必须填写`],
  [/^blank, because the scope is (`\S+`)/u, (scope) => `范围为 ${scope} 时必须空白`],
  [/^a setting that `docs\/book\.md` lists/u, () => "`docs/book.md` 所列的设置；此项不起作用"],
  [/^a real date/u, () => "真实日期，写作年-月-日，例如 2026-03-31"],
  [/^a drawing, because the shape is/u, () => "形状为 `outline` 时须有图纸"],
  [/^a width, because the shape is (`\S+`)/u, (shape) => `形状为 ${shape} 时须有宽度`],
  [/^a height, because the shape is (`\S+`)/u, (shape) => `形状为 ${shape} 时须有高度`],
  [/^another name; a device of (`\S+`)/u, (type) => `另一个名称；${type} 的器件已用此名`],
  [/^`yes` for exactly one pose/u, () => "恰好一个姿态为 `yes`：机器使用时的姿态"],
  [/^`no`, because (`\S+`) is the usual (\S+)/u, (other) => `应为 \`no\`，因为 ${other} 已是通常的一个`],
  [/^from 1 to (\S+), the ways of (`\S+`)/u, (ways, connector) => `1 至 ${ways}，即 ${connector} 的位数`],
  [/^(.*), each at most once; not (`\S*`)/u, (known, wrong) => `${known}，各至多一次；不能是 ${wrong}`],
  [/^a number of its own; (`\S+`) has (\S+)/u, (other, n) => `自己的编号；${other} 已用 ${n}`],
  [/^blank, because board_type is given/u, () => "已填 board_type，此处应空白；一个连接器只有一个载体"],
  [/^a name that is free on its carrier/u, () => "载体上尚未使用的名称"],
  [/^a table with ids/u, () => "有标识的表"],
  [/^another waypoint than `from`/u, () => "与 `from` 不同的路点"],
  [/^another point than `from`/u, () => "与 `from` 不同的点"],
  [
    /^a waypoint on (top|under) of (`\S+`) like (`\S+`)/u,
    (side, panel, from) => `与 ${from} 同在 ${panel} 的${sideOf(side)}的路点；去另一面或另一块板要用跨越`,
  ],
  [
    /^a waypoint on the other side of (`\S+`), because the kind is `hole`/u,
    (panel) => `种类为 \`hole\` 时须是 ${panel} 另一面的路点`,
  ],
  [
    /^a waypoint of another panel than (`\S+`), because the kind is (`\S+`)/u,
    (panel, kind) => `种类为 ${kind} 时须是 ${panel} 以外的板上的路点`,
  ],
  [/^blank, because a circle has one diameter/u, () => "圆只有一个直径 width_mm，此处应空白"],
  [
    /^at most the width, (\S+); a slot/u,
    (width) => `至多等于宽度 ${width}；长孔沿自身 x 方向最长，需要时旋转 90°`,
  ],
  [/^(`\S+`), the net that this point has in another harness/u, (net) => `${net}，即该点在另一线束中的网络`],
  [
    /^exactly one of device_type, board_type and mechanism_type/u,
    () => "device_type、board_type、mechanism_type 恰填一个",
  ],
  [/^steps that do not wait for this one/u, () => "不等待本步骤的步骤；这些步骤互相等待"],
  [/^a part that does not contain (`\S+`)/u, (part) => `不包含 ${part} 的零件；它们互相包含`],
  [/^a connector with blank board_type and device_type/u, () => "board_type 和 device_type 均空白的连接器"],
  [/^pairs in mm such as/u, () => "以 mm 为单位的数对，例如 `4,4 96,4`"],
  [/^one of the keys (.*)$/u, (keys) => `应为其中之一：${keys}`],
  [/^a column (`\S+`)/u, (column) => `列 ${column}`],
  [
    /^(`\S+`): this table takes the value in (\S+)/u,
    (column, unit) => `${column}：此表以 ${unit} 为单位；请换算并改列名`,
  ],
  [/^closed rings only/u, () => "只能是闭合环"],
  [/^at least one closed ring/u, () => "至少一个闭合环；图中没有"],
  [/^format (\d+) or older/u, (format) => `格式 ${format} 或更早；此册由更新的程序写成`],
  [/at most (\d+) (?:rows|cells|characters)/u, (most) => `至多 ${most}`],
];

const sideOf = (side: string | undefined): string => (side === "under" ? "底面" : "顶面");

/** What an English sentence of the reader says beside the meaning of its code, in Chinese; blank when it is not known. */
export function faultDetails(expected: string): string {
  for (const [pattern, words] of DETAILS) {
    const found = pattern.exec(expected);
    if (found !== null) return words(...found.slice(1));
  }
  return "";
}
