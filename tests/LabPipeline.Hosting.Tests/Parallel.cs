// Nearly all of a broker's test is waiting, so more collections run at once than the machine has cores.
[assembly: Xunit.v3.Parallelization(MaxThreads = 8)]
