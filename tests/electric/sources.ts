/** The publications behind the worked circuits. */
import type { Source } from './published-item.ts';

type Where = (where: string) => Source;

const of =
  (title: string, edition: string): Where =>
  (where) => ({ title, edition, where });

export const collegePhysics = of('College Physics 2e (OpenStax)', '2nd edition, web source as of July 2026');
export const universityPhysics = of('University Physics, Volume 2 (OpenStax)', 'web source as of June 2026');
export const lessonsDc = of('Lessons In Electric Circuits, Volume I - DC', '5th edition, 18 October 2006');
export const lessonsAc = of('Lessons In Electric Circuits, Volume II - AC', '6th edition, 25 July 2007');
export const handbook = of(
  'DOE Fundamentals Handbook, Electrical Science, Volume 1',
  'DOE-HDBK-1011/1-92, June 1992',
);
export const advisoryCircular = of(
  'FAA Advisory Circular AC 43.13-1B, Acceptable Methods, Techniques and Practices - Aircraft Inspection and Repair',
  'AC 43.13-1B Change 1, 27 September 2001',
);
