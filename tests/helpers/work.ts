/** How long something works by itself: other work of the machine does not add to it, as it does to the time of day. */
export function secondsOfWork(doing: () => void): number {
  const before = process.cpuUsage();
  doing();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
