import { datumSection, designSection, specificationSection } from "./basis.ts";
import {
  annexSection,
  conformitySection,
  limitsSection,
  neighboursSection,
  signaturesSection,
} from "./closing.ts";
import { documentSection } from "./document.ts";
import { reductionSection, uncertaintySection } from "./reduction.ts";
import { resultsSection } from "./results.ts";
import type { ReportSection } from "./section.ts";
import { fieldSection, headSection, instrumentSection, objectSection } from "./survey.ts";
import { verdictsSection } from "./verdicts.ts";

/** Every section of a report, in its order; a new one is a file and a line here. */
export const sections: readonly ReportSection[] = [
  verdictsSection,
  documentSection,
  designSection,
  datumSection,
  specificationSection,
  objectSection,
  headSection,
  instrumentSection,
  fieldSection,
  reductionSection,
  resultsSection,
  uncertaintySection,
  conformitySection,
  neighboursSection,
  limitsSection,
  signaturesSection,
  annexSection,
];
