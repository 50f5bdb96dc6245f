/** Texts of signing in. */
export const en = {
  title: "Sign in",
  lead: "This office has accounts. What you record is kept under your name.",
  login: "Name or e-mail address",
  password: "Password",
  send: "Sign in",
  wrong: "Name and password do not belong together. Type both again, or ask the administrator of the office.",
  slowDown: "There were many tries. Wait a minute, then try again.",
  noAnswer: "The office did not answer. What is on this device is safe. Check the connection and try again.",
  codeTitle: "Second step",
  code: "Code",
  codeHint: "Six digits of your authenticator program, or one of your recovery codes.",
  codeWrong:
    "This code does not count. Type the one that is shown now, or a recovery code that was not used yet.",
  back: "Back",
};
