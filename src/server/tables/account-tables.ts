/** Times are milliseconds since 1970, truths 0 or 1, tokens and codes only their SHA-256 in hexadecimal digits. */
export interface AccountTable {
  id: string;
  /** what somebody types to sign in: trimmed, NFKC, lower case */
  login: string;
  name: string;
  /** self-describing, as in $scrypt$ln=17,r=8,p=1$salt$hash */
  password: string;
  is_admin: number;
  disabled: number;
  created_at: number;
  /** base32; null: none */
  totp_secret: string | null;
  /** last time step whose code was taken, so that no code counts twice */
  totp_step: number;
}

export interface SessionTable {
  hash: string;
  /** names the session in lists; says nothing about the token */
  id: string;
  account: string;
  /** 1: the password was right, but the account has a second factor that was not shown yet */
  pending: number;
  second_factor_at: number | null;
  created_at: number;
  seen_at: number;
  address: string;
  program: string;
}

/** Browsers from which somebody has signed in before: guesses from elsewhere do not slow them down. */
export interface KnownBrowserTable {
  hash: string;
  account: string;
  seen_at: number;
}

/** Links that work once: invitations, and new passwords for those who forgot theirs. */
export interface OneTimeLinkTable {
  hash: string;
  id: string;
  purpose: "invitation" | "password";
  /** whose password; null for an invitation */
  account: string | null;
  /** null: all jobs, for an administrator */
  job: string | null;
  role: string | null;
  created_by: string;
  created_at: number;
  expires_at: number;
  /** how often it was tried in vain; a few, and it is dead */
  failures: number;
}

export interface ApiTokenTable {
  hash: string;
  id: string;
  account: string;
  name: string;
  /** JSON list of rights */
  scopes: string;
  /** 1: made in a session in which a second factor was shown */
  second_factor: number;
  created_at: number;
  expires_at: number;
  used_at: number | null;
}

export interface JobMemberTable {
  job: string;
  account: string;
  role: string;
  since: number;
}

export interface PasskeyTable {
  /** credential id, base64url */
  id: string;
  account: string;
  name: string;
  /** COSE key, base64url */
  public_key: string;
  counter: number;
  /** JSON list */
  transports: string;
  created_at: number;
  used_at: number | null;
}

/** A question that was put to an authenticator, or a secret that was offered to one, waiting for its answer. */
export interface ChallengeTable {
  id: string;
  purpose: "register" | "time-codes" | "sign-in" | "second-factor";
  /** null: whoever the passkey belongs to */
  account: string | null;
  challenge: string;
  expires_at: number;
}

export interface RecoveryCodeTable {
  account: string;
  hash: string;
}

/** How fast something may be tried, by who or what it is counted for. */
export interface TryTable {
  key: string;
  /** when everything that was tried so far is worked off */
  until: number;
}

export interface AccountDeviceTable {
  /** public key of the device, hexadecimal */
  device: string;
  account: string;
  since: number;
  /** 1: the device was lost; nothing that it writes from now on is taken */
  revoked: number;
}

/** What happened that concerns safety. Only ever added to; each line holds the hash of the one before. */
export interface SecurityEventTable {
  number: number;
  /** RFC 3339, UTC */
  at: string;
  what: string;
  /** account; "-" for nobody */
  who: string;
  address: string;
  /** JSON object */
  details: string;
  hash: string;
}

/** One row: the end of the list of security events, locked while a line is added. */
export interface SecurityHeadTable {
  id: number;
  number: number;
  hash: string;
}

export interface AccountTables {
  accounts: AccountTable;
  sessions: SessionTable;
  known_browsers: KnownBrowserTable;
  one_time_links: OneTimeLinkTable;
  api_tokens: ApiTokenTable;
  job_members: JobMemberTable;
  passkeys: PasskeyTable;
  challenges: ChallengeTable;
  recovery_codes: RecoveryCodeTable;
  tries: TryTable;
  account_devices: AccountDeviceTable;
  security_events: SecurityEventTable;
  security_head: SecurityHeadTable;
}
