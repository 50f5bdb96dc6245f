/** Texts of the frame around every screen. */
export const en = {
  skip: "To the content",
  menu: "Menu",
  navigation: "Screens",
  jobs: "Jobs",
  settings: "Settings",
  groupJob: "Job",
  groupSetUp: "Set up",
  groupMeasured: "Measured",
  groupJudged: "Judged",
  groupRecord: "On record",
  loading: "One moment …",
  writerElsewhere:
    "Another window of this browser is writing. This one shows everything and changes nothing.",
  storeTrouble: "Nothing can be kept in this browser",
  notSent: "{count, plural, one {# entry is} other {# entries are}} on this device only",
  allSent: "Everything is at the office",
  sending: "Sending",
  notFoundTitle: "There is no such page",
  notFoundText: "The address may be mistyped, or the page has moved.",
  jobUnreadable: "This job cannot be opened on this device",
  toJobs: "To the jobs",
  mistakeTitle: "The program made a mistake on this screen",
  mistakeText:
    "Everything that was saved is safe. Load the page again; if this comes back, send the text below with a word on what you did.",
  reload: "Load again",
};
