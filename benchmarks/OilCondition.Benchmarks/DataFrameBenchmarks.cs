using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Attributes;
using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.LabFiles;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Benchmarks;

/// <summary>
/// What frames of a million rows cost, beside the loop that a user would write: over the rows, with the calls for one value, and a column filled cell by cell.
/// </summary>
[MemoryDiagnoser]
public class DataFrameBenchmarks
{
    private const int Rows = 1_000_000;

    private static readonly SaturationCurve Curve = PublishedSaturationCurves.TransformerMineralOil;

    private DataFrame numbers = new();
    private OilRecords records = OilRecords.Of(Array.Empty<OilHistory>());
    private DataFrame readings = new();

    [GlobalSetup]
    public void Setup() => Setup(Rows);

    private void Setup(int rows)
    {
        numbers = Numbers(rows);
        records = Records(rows / 4);
        readings = records.ToLongFrame();
    }

    [Benchmark(Baseline = true)]
    public DataFrame SplitByALoop()
    {
        var water = (DoubleDataFrameColumn)numbers["water"];
        var celsius = (DoubleDataFrameColumn)numbers["celsius"];
        DoubleDataFrameColumn[] made =
        [
            .. new[] { "saturation", "dissolved", "free", "relative" }.Select(name => new DoubleDataFrameColumn(
                name,
                numbers.Rows.Count
            )),
        ];
        for (var row = 0L; row < numbers.Rows.Count; row++)
        {
            if (water[row] is { } total && celsius[row] is { } temperature)
            {
                var state = Curve.Split(
                    MassFraction.FromPartsPerMillion(total),
                    Temperature.FromDegreesCelsius(temperature)
                );
                made[0][row] = state.Saturation.Content.PartsPerMillion;
                made[1][row] = state.Dissolved.PartsPerMillion;
                made[2][row] = state.Free.PartsPerMillion;
                made[3][row] = state.RelativeSaturation.Percent;
            }
        }

        return new DataFrame(made);
    }

    [Benchmark]
    public DataFrame SplitByColumns() => WaterColumns.Split(Curve, numbers["water"], numbers["celsius"]);

    [Benchmark]
    public DataFrame LongFrame() => records.ToLongFrame();

    [Benchmark]
    public OilRecords FromLongFrame() => OilRecords.FromLong(readings);

    [Benchmark]
    public DataFrame WideFrame() => records.ToWideFrame();

    [Benchmark]
    public async Task<DataFrame> Parquet()
    {
        using var stream = new MemoryStream();
        await ParquetFrame.WriteAsync(readings, stream);
        stream.Position = 0;
        return await ParquetFrame.ReadAsync(stream);
    }

    [Benchmark]
    public DataFrame Arrow()
    {
        using var stream = new MemoryStream();
        ArrowFrame.Write(readings, stream);
        stream.Position = 0;
        return ArrowFrame.Read(stream);
    }

    /// <summary>Each once, in one run: seconds, megabytes allocated, and the ratio to the loop.</summary>
    public static async Task Once(int rows)
    {
        var benchmarks = new DataFrameBenchmarks();
        benchmarks.Setup(1000);
        Func<Task>[] all =
        [
            () => Task.FromResult(benchmarks.SplitByALoop()),
            () => Task.FromResult(benchmarks.SplitByColumns()),
            () => Task.FromResult(benchmarks.LongFrame()),
            () => Task.FromResult(benchmarks.FromLongFrame()),
            () => Task.FromResult(benchmarks.WideFrame()),
            benchmarks.Parquet,
            () => Task.FromResult(benchmarks.Arrow()),
        ];
        string[] names = ["split by a loop", "split by columns", "to long", "from long", "to wide", "parquet", "arrow"];
        foreach (var warm in all)
        {
            await warm();
        }

        benchmarks.Setup(rows);
        var loop = 0.0;
        for (var i = 0; i < all.Length; i++)
        {
            GC.Collect();
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var watch = Stopwatch.StartNew();
            await all[i]();
            var seconds = watch.Elapsed.TotalSeconds;
            loop = i == 0 ? seconds : loop;
            var megabytes = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1e6;
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{names[i], -18} {seconds, 7:0.000} s {megabytes, 8:0} MB  {seconds / loop, 5:0.00} of the loop"
                )
            );
        }

        using var process = Process.GetCurrentProcess();
        Console.WriteLine($"{rows} rows, peak {process.PeakWorkingSet64 / 1e6:0} MB");
    }

    private static DataFrame Numbers(int rows)
    {
        var random = new Random(1);
        double? Drawn(double lowest, double highest) =>
            random.Next(20) == 0 ? null : lowest + (highest - lowest) * random.NextDouble();
        return new DataFrame(
            new DoubleDataFrameColumn("water", Enumerable.Range(0, rows).Select(_ => Drawn(10, 900))),
            new DoubleDataFrameColumn("celsius", Enumerable.Range(0, rows).Select(_ => Drawn(0, 80)))
        );
    }

    /// <summary>Samples of two hundred machines with four readings each, by the way of a file, as they come.</summary>
    private static OilRecords Records(int samples)
    {
        var random = new Random(1);
        var start = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);
        IEnumerable<TableRow> Table()
        {
            yield return new TableRow(
                1,
                ["Machine", "Sample No", "Date", "Water [ppm]", "Iron [ppm]", "Copper [ppm]", "AN"]
            );
            for (var i = 0; i < samples; i++)
            {
                yield return new TableRow(
                    i + 2,
                    [
                        $"M{i % 200}",
                        $"S{i}",
                        start.AddHours(i % 4000),
                        (double)random.Next(10, 900),
                        (double)random.Next(50),
                        (double)random.Next(9),
                        random.NextDouble(),
                    ]
                );
            }
        }

        using var file = LabFile.Open([new TableSheet("drawn", Table())], "drawn", ColumnMap.Default);
        return FileAccount.Of(file).Records;
    }
}
