using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Attributes;

namespace OilCondition.Benchmarks;

/// <summary>What an assessment of one machine costs: five measurands of twelve readings.</summary>
[MemoryDiagnoser]
public class AssessmentBenchmarks
{
    private const int Machines = 64;
    private const int MorePasses = 4;

    private OilHistory[] histories = [];

    [GlobalSetup]
    public void Setup() => histories = AssessmentData.Machines(Machines);

    [Benchmark(Baseline = true, OperationsPerInvoke = Machines)]
    public int Assess()
    {
        var sum = 0;
        foreach (var history in histories)
        {
            sum += ConditionAssessor.Assess(history, AssessmentData.Limits, AssessmentData.Options).Findings.Count;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Machines)]
    public int AssessFirstAndJson()
    {
        var sum = 0;
        foreach (var history in histories)
        {
            var assessment = ConditionAssessor.Assess(history, AssessmentData.Limits, AssessmentData.Options);
            sum += assessment.First.Shares.Count + assessment.ToJson().Length;
        }

        return sum;
    }

    /// <summary>The same with the JSON as UTF-8 to a stream, as to a queue or a response.</summary>
    [Benchmark(OperationsPerInvoke = Machines)]
    public int AssessFirstAndStream()
    {
        var sum = 0;
        foreach (var history in histories)
        {
            sum += Streamed(history);
        }

        return sum;
    }

    /// <summary>
    /// A fleet on all processors, JSON included, and the memory of its assessments when all are kept. In the first pass the runtime still compiles and
    /// measures the code, as in a night's job that is started anew; some seconds later it is that of a service.
    /// </summary>
    public static void Fleet(int machines)
    {
        var fleet = AssessmentData.Machines(machines);
        var first = Seconds(fleet, Whole);
        var later = Enumerable.Range(0, MorePasses).Select(_ => Seconds(fleet, Whole)).ToArray();
        var streamed = Enumerable.Range(0, MorePasses).Select(_ => Seconds(fleet, Streamed)).ToArray();

        var before = GC.GetTotalMemory(forceFullCollection: true);
        var kept = fleet
            .Select(history => ConditionAssessor.Assess(history, AssessmentData.Limits, AssessmentData.Options))
            .ToArray();
        foreach (var one in kept)
        {
            _ = one.First;
        }

        var megabytes = (GC.GetTotalMemory(forceFullCollection: true) - before) / 1e6;
        GC.KeepAlive(kept);
        Console.WriteLine(
            string.Format(
                CultureInfo.InvariantCulture,
                "{0} machines on {1} processors, with first limit and JSON: {2:F0} a second from a cold start, {3:F0} in the fifth pass, {4:F0} to a stream. {5:F0} MB when all are kept.",
                machines,
                Environment.ProcessorCount,
                machines / first,
                machines / later[^1],
                machines / streamed[^1],
                megabytes
            )
        );
    }

    private static double Seconds(OilHistory[] fleet, Func<OilHistory, int> job)
    {
        var clock = Stopwatch.StartNew();
        Parallel.ForEach(fleet, history => job(history));
        return clock.Elapsed.TotalSeconds;
    }

    private static int Whole(OilHistory history)
    {
        var assessment = ConditionAssessor.Assess(history, AssessmentData.Limits, AssessmentData.Options);
        return assessment.First.Shares.Count + assessment.ToJson().Length;
    }

    private static int Streamed(OilHistory history)
    {
        var assessment = ConditionAssessor.Assess(history, AssessmentData.Limits, AssessmentData.Options);
        assessment.WriteJson(Stream.Null);
        return assessment.First.Shares.Count;
    }
}
