using BenchmarkDotNet.Running;
using OilCondition.Benchmarks;
using OilCondition.Benchmarks.Quality;

// Modes beside the benchmarks: 'coverage [runs]', 'coverage-below-limit [runs]' and 'coverage-life [runs]' measure interval coverage of decays,
// of decays with readings below a limit and of remaining life, 'compare' times a fit beside its peer in turns, 'trend [runs]' false alarms and
// finds of the trend assessor, 'fleet [machines]' times assessments of a fleet and weighs them, 'trends [runs]' is a scorecard of verdicts and forecasts on held-out processes,
// 'lab-file [megabytes]' streams a laboratory file of that size,
// 'frames [rows]' times data frames of that length and weighs them,
// 'schedule [machines] [runs]' plans of one mobile unit, their proof, gap, gain and time,
// 'cleanups [runs]' one of the curves of cleanups, 'cleanup-runs [runs] [seen] [words]' what is said of running ones, in all rows or those with these words, 'series' writes the benchmark series for
// peer scripts.
switch (args.FirstOrDefault())
{
    case "coverage":
        DecayCoverage.Run(Number(1, otherwise: 2000));
        break;
    case "coverage-below-limit":
        DecayCoverage.RunCensored(Number(1, otherwise: 2000));
        break;
    case "coverage-life":
        LifeCoverage.Run(Number(1, otherwise: 2000));
        break;
    case "trend":
        TrendFalseAlarms.Run(Number(1, otherwise: 2000));
        break;
    case "trends":
        Scorecard.Run(Number(1, otherwise: 1000));
        break;
    case "cleanup-runs":
        RunRows.Run(
            Number(1, otherwise: 200),
            isSeen: args.Contains("seen"),
            args.Skip(2).FirstOrDefault(one => one != "seen")
        );
        break;
    case "cleanups":
        CleanupScorecard.Run(Number(1, otherwise: 1000));
        break;
    case "fleet":
        AssessmentBenchmarks.Fleet(Number(1, otherwise: 20_000));
        break;
    case "lab-file":
        LabFileBenchmarks.Stream(Number(1, otherwise: 1000));
        break;
    case "frames":
        await DataFrameBenchmarks.Once(Number(1, otherwise: 1_000_000));
        break;
    case "schedule":
        ScheduleRuns.Run(Number(1, otherwise: 30), Number(2, otherwise: 5));
        break;
    case "compare":
        DecayComparison.Run();
        break;
    case "series":
        DecayData.WriteAll(Console.Out);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(DecayData).Assembly).Run(args);
        break;
}

int Number(int at, int otherwise) =>
    args.Length > at ? int.Parse(args[at], System.Globalization.CultureInfo.InvariantCulture) : otherwise;
