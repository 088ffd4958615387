/** Words of the page that helps a device to trust this server. It is shown before anything of the app can be. */
export interface TrustWords {
  readonly language: "en" | "zh";
  readonly title: string;
  readonly lead: string;
  readonly open: string;
  readonly openNote: string;
  readonly download: string;
  readonly compare: string;
  readonly code: string;
  readonly devices: readonly { readonly name: string; readonly steps: readonly string[] }[];
}

export const TRUST_WORDS: readonly TrustWords[] = [
  {
    language: "en",
    title: "Make this device trust Pinwright",
    lead: "Pinwright runs on a computer of your workshop. This device does not know it yet. Install its certificate once; after that, everything between the two is encrypted and no warning shows.",
    open: "Open Pinwright",
    openNote: "If a warning shows, come back here and install the certificate first.",
    download: "Download the certificate",
    compare:
      "Before you trust it, compare this fingerprint with the one that the owner sees in Pinwright on its own computer (or asks the server's terminal for). They must be the same.",
    code: "Other devices come to this page with this code:",
    devices: [
      {
        name: "iPad and iPhone",
        steps: [
          "Open this page in Safari and tap “Download the certificate”; allow the profile.",
          "Settings → General → VPN & Device Management: tap the profile and install it.",
          "Settings → General → About → Certificate Trust Settings: switch it on.",
        ],
      },
      {
        name: "Android",
        steps: [
          "Tap “Download the certificate”.",
          "Settings → Security → Encryption & credentials → Install a certificate → CA certificate: choose the file. The names differ between makers; search the settings for “certificate”.",
        ],
      },
      {
        name: "Windows",
        steps: [
          "Download the certificate and open the file; choose “Install Certificate…”, “Current User”.",
          "“Place all certificates in the following store”, Browse, “Trusted Root Certification Authorities”, then finish and compare the fingerprint.",
          "Start the browser again.",
        ],
      },
    ],
  },
  {
    language: "zh",
    title: "让本设备信任 Pinwright",
    lead: "Pinwright 运行在贵车间的一台电脑上，本设备还不认识它。安装一次它的证书之后，两者之间的通信全部加密，也不再出现警告。",
    open: "打开 Pinwright",
    openNote: "如果出现警告，请回到本页，先安装证书。",
    download: "下载证书",
    compare: "信任之前，请把下面的指纹与负责人在服务器电脑上看到的指纹核对，两者必须一致。",
    code: "其他设备可扫此码打开本页：",
    devices: [
      {
        name: "iPad 和 iPhone",
        steps: [
          "用 Safari 打开本页，轻点“下载证书”，并允许下载描述文件。",
          "设置 → 通用 → VPN 与设备管理：轻点该描述文件并安装。",
          "设置 → 通用 → 关于本机 → 证书信任设置：打开开关。",
        ],
      },
      {
        name: "Android",
        steps: [
          "轻点“下载证书”。",
          "设置 → 安全 → 加密与凭据 → 安装证书 → CA 证书：选择该文件。各厂商名称不同，可在设置中搜索“证书”。",
        ],
      },
      {
        name: "Windows",
        steps: [
          "下载证书并打开文件，选择“安装证书…”、“当前用户”。",
          "选择“将所有的证书都放入下列存储”，浏览到“受信任的根证书颁发机构”，完成并核对指纹。",
          "重新启动浏览器。",
        ],
      },
    ],
  },
];
