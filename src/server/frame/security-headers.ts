import helmet from "@fastify/helmet";
import type { AppInstance } from "../app-instance.ts";
import type { ServerSettings } from "../settings.ts";

const TWO_YEARS_S = 63_072_000;

/** What the app asks of the device; everything else is refused to it and to whatever might run in it. */
const PERMISSIONS = [
  "bluetooth=(self)",
  "camera=(self)",
  "geolocation=(self)",
  "publickey-credentials-create=(self)",
  "publickey-credentials-get=(self)",
  "screen-wake-lock=(self)",
  "serial=(self)",
  "microphone=()",
  "payment=()",
  "usb=()",
].join(", ");

/** The one style sheet that react-aria puts into the page; test/browser fails when a new version has another one. */
const REACT_ARIA_STYLE = "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='";

/**
 * Headers that keep a browser from running, framing or leaking what it should not.
 *
 * Source: OWASP ASVS 5.0.0, section 3.4; W3C Content Security Policy Level 3.
 */
export async function securityHeaders(app: AppInstance, settings: ServerSettings): Promise<void> {
  const isHttps = settings.publicAddress?.startsWith("https:") ?? false;
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        "default-src": ["'self'"],
        "script-src": ["'self'"],
        "style-src": ["'self'", REACT_ARIA_STYLE],
        "img-src": ["'self'", "data:", "blob:"],
        "font-src": ["'self'"],
        "connect-src": ["'self'"],
        "worker-src": ["'self'"],
        "manifest-src": ["'self'"],
        "object-src": ["'none'"],
        "base-uri": ["'none'"],
        "form-action": ["'self'"],
        "frame-ancestors": ["'none'"],
        // a site office may have no certificate; asking for https there would only break the page
        ...(isHttps && { "upgrade-insecure-requests": [] }),
      },
    },
    strictTransportSecurity: isHttps && { maxAge: TWO_YEARS_S, includeSubDomains: false },
    crossOriginOpenerPolicy: { policy: "same-origin" },
    crossOriginResourcePolicy: { policy: "same-origin" },
    crossOriginEmbedderPolicy: false,
    referrerPolicy: { policy: "no-referrer" },
    xFrameOptions: { action: "deny" },
  });
  app.addHook("onRequest", async (request, reply) => {
    reply.header("permissions-policy", PERMISSIONS);
    // what the interface answers is private unless a route says otherwise
    if (request.url.startsWith("/api/")) reply.header("cache-control", "no-store");
  });
}
