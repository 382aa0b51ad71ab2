/** What published thresholds say of a plan. */
export interface Ruling {
  symptoms: string[];
  /** what could not be told */
  open: string[];
}
