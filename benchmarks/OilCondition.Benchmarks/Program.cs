using BenchmarkDotNet.Running;
using OilCondition.Benchmarks;

// Modes beside the benchmarks: 'coverage [runs]' and 'coverage-life [runs]' measure interval coverage of decays and of remaining life,
// 'trend [runs]' false alarms and finds of the trend assessor, 'series' writes the benchmark series for peer scripts.
switch (args.FirstOrDefault())
{
    case "coverage":
        DecayCoverage.Run(
            args.Length > 1 ? int.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture) : 2000
        );
        break;
    case "coverage-life":
        LifeCoverage.Run(
            args.Length > 1 ? int.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture) : 2000
        );
        break;
    case "trend":
        TrendFalseAlarms.Run(
            args.Length > 1 ? int.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture) : 2000
        );
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
