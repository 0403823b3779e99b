/** Time this process has kept processors busy, ms: a bound on work done that other programs on the machine do not use up. */
export function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
