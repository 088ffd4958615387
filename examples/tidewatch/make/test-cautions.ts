export const MAINS_CAUTION = {
  caution:
    "Mains: trained person only, guarded bench, plug out before hands go in. Local codes and a licensed electrician decide.",
  caution_zh: "市电：仅限受训人员，护栏测试台，动手前拔插头。以当地法规及持证电工为准。",
};
export const COIL_CAUTION = {
  caution: "48 V and moving coils: keep fingers off plungers; the supply keeps its charge for some seconds.",
  caution_zh: "48 V 与运动线圈：手指远离铁芯；电源断电后仍带电数秒。",
};
