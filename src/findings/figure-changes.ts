/**
 * Changes of the figures of a plan, as a report tells them.
 * Made from `changes-schema.ts` by `npm run generate`; changes go there.
 */

/** A change of figures, each figure as the plan would write it */
export type FigureChange =
  | {
      /** What is changed */
      readonly change: 'part';
      /** The part that is replaced by one with other figures */
      readonly part: string;
      /** By dotted path, such as coil.rated: what the plan would say there; null where it is left out */
      readonly fields: Readonly<Record<string, string | null>>;
    }
  | {
      /** What is changed */
      readonly change: 'cable';
      /** Runs in another cable, counted from one */
      readonly runs: readonly number[];
      /** Its gauge, as printed */
      readonly gauge: string;
    }
  | {
      /** What is changed */
      readonly change: 'cable-flexible';
      /** Runs of cord that become fixed wire, counted from one */
      readonly runs: readonly number[];
    }
  | {
      /** What is changed */
      readonly change: 'core-colours';
      /** Run with cores in other colours, counted from one */
      readonly run: number;
      /** Colour as it is: colour that takes its place */
      readonly colours: Readonly<Record<string, string>>;
    }
  | {
      /** What is changed */
      readonly change: 'marked-as';
      /** Run with cores marked at both ends, counted from one */
      readonly run: number;
      /** Colour of the core: colour of the marks */
      readonly marks: Readonly<Record<string, string>>;
    }
  | {
      /** What is changed */
      readonly change: 'fuse';
      /** Name of the new fuse */
      readonly part: string;
      /** Terminal next to which it stands; all that was there goes to its far side */
      readonly terminal: string;
      /** As printed, such as 1 A */
      readonly rating: string;
      /** Only the cores of these runs go to its far side, counted from one */
      readonly behind?: readonly number[] | undefined;
    }
  | {
      /** What is changed */
      readonly change: 'relay';
      /** Name of the new relay */
      readonly part: string;
      /** Relay whose coil it switches; what was on that coil goes to the new one */
      readonly coil: string;
      /** What the plan would say of the new relay */
      readonly fields: Readonly<Record<string, string>>;
      /** Terminals that feed the old coil: through the contact, and straight */
      readonly feed: readonly string[];
    };
