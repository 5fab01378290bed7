using System.Diagnostics;
using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using OilCondition.LabFiles;

namespace OilCondition.Benchmarks;

/// <summary>What a laboratory file of 200,000 rows and 12 columns costs, beside what a user would write: a split of each line, and numbers parsed.</summary>
[MemoryDiagnoser]
public class LabFileBenchmarks
{
    private const int Rows = 200_000;
    private const string Head =
        "Machine,Sample No,Date,Water [ppm],Iron [ppm],Copper [ppm],Tin [ppm],AN,Viscosity 40 [cSt],>4 [per mL],>6 [per mL],>14 [per mL]\n";

    private string text = "";

    [GlobalSetup]
    public void Setup()
    {
        var written = new StringBuilder(Head);
        foreach (var line in Lines(Rows))
        {
            written.Append(line);
        }

        text = written.ToString();
    }

    [Benchmark(Baseline = true)]
    public double SplitAndParse()
    {
        using var reader = new StringReader(text);
        reader.ReadLine();
        var sum = 0.0;
        while (reader.ReadLine() is { } line)
        {
            var fields = line.Split(',');
            for (var i = 3; i < fields.Length; i++)
            {
                sum += double.Parse(fields[i], CultureInfo.InvariantCulture);
            }
        }

        return sum;
    }

    [Benchmark]
    public int RowByRow()
    {
        using var file = LabFile.Open(new StringReader(text), "lab.csv", ColumnMap.Default);
        return file.Rows().Count(row => row.Sample is not null);
    }

    [Benchmark]
    public int Whole() => LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default).MachineIds.Count;

    /// <summary>A file of so many megabytes, row by row: time, and the most memory that the process held.</summary>
    public static void Stream(int megabytes)
    {
        var path = Path.Combine(Path.GetTempPath(), $"large-lab-file-{megabytes}.csv");
        using (var writer = new StreamWriter(path))
        {
            writer.Write(Head);
            foreach (var line in Lines(megabytes * 18_000))
            {
                writer.Write(line);
            }
        }

        var watch = Stopwatch.StartNew();
        using (var file = LabFile.Open(path, ColumnMap.Default))
        {
            var samples = file.Rows().Count(row => row.Sample is not null);
            using var process = Process.GetCurrentProcess();
            Console.WriteLine(
                $"{new FileInfo(path).Length / 1e6:0} MB, {samples} samples in {watch.Elapsed.TotalSeconds:0.0} s; "
                    + $"peak {process.PeakWorkingSet64 / 1e6:0} MB; {file.Cells}"
            );
        }

        File.Delete(path);
    }

    private static IEnumerable<string> Lines(int rows)
    {
        var random = new Random(1);
        for (var i = 0; i < rows; i++)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"M{i % 200},S{i},2026-03-{1 + i % 28:00},{random.Next(10, 900)},{random.Next(50)},{random.Next(9)},{random.Next(9)},{random.NextDouble():0.00},{40 + 9 * random.NextDouble():0.0},{random.Next(500, 9000)},{random.Next(900)},{random.Next(90)}\n"
            );
        }
    }
}
