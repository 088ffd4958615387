/** Signing in and the first account. */
export const session = {
  signIn: {
    title: "Sign in",
    name: "Name",
    secret: "Password, or code on the floor",
    go: "Sign in",
    wrong: "Name and password do not go together. Mind capital letters.",
    wait: "Too many tries. Wait a minute, then try again.",
  },
  setUp: {
    title: "Set up accounts",
    why: "Until now only this computer is served, and whoever sits at it may do everything. With accounts, tablets and other computers can sign in over the network, encrypted.",
    name: "Your name",
    password: "Password (at least 10 characters)",
    again: "The password again",
    differ: "The two passwords differ.",
    go: "Make my account",
  },
};
