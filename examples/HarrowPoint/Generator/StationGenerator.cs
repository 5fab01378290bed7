using System.Globalization;
using System.Text;
using OilCondition;
using OilCondition.Water;
using UnitsNet;

namespace HarrowPoint.Generator;

/// <summary>
/// Writes the records of Harrow Point, an invented pumped-storage station. Nothing here is plant data: every number comes from the
/// formulas below and a fixed seed, so that the truth is known and the same files come out every time.
/// </summary>
public sealed class StationGenerator
{
    private const int Seed = 20260630;

    private static readonly DateTimeOffset First = At(2023, 7, 3);
    private static readonly DateTimeOffset Now = At(2026, 6, 30, 6);
    private static readonly DateTimeOffset LabChange = At(2025, 1, 1);

    private readonly Random random;
    private readonly List<Sample> samples = [];
    private readonly Dictionary<string, string> files = new(StringComparer.Ordinal);
    private int badCells;

    private StationGenerator(int seed) => random = new Random(seed);

    /// <summary>All files by name. Another seed than the default draws the scatter of the same truth anew.</summary>
    public static IReadOnlyDictionary<string, string> Generate(int seed = Seed) => new StationGenerator(seed).Run();

    private Dictionary<string, string> Run()
    {
        // The oils' water saturation, as the invented site laboratory measured it (station.json has the same two points).
        var turbine = Curve(92, 330);
        var hydraulic = Curve(110, 380);

        var bearing = new CleanupTruth(At(2025, 12, 10, 6), 900, 12, Saturation(turbine, 50), 28, 0.075, 60);
        var gate = new CleanupTruth(At(2026, 6, 28, 18), 1100, 20, Saturation(hydraulic, 55), 45, 0.09, 80);
        var endOfCleanup = bearing.StartedAt.AddHours(60);
        var left = bearing.WaterAt(60);
        const double ReturnPerDay = 1.3;
        var oilChange = At(2024, 5, 14, 8);
        const double Growth = 0.0028;
        var pumpCharge = At(2023, 6, 20);
        const double AcidPerDay = 0.00024;
        const double RpvotPerDay = 0.52;

        // Guide bearing of unit 1: dry, then the cooler leaks, then the cleanup, then the water comes back.
        Machine(
            "HP-TGB1",
            Turbine(at =>
                at < At(2025, 9, 1) ? 48
                : at < bearing.StartedAt ? 48 + 8.5 * (at - At(2025, 9, 1)).TotalDays
                : left + ReturnPerDay * (at - endOfCleanup).TotalDays
            ),
            33
        );

        // Guide bearing of unit 2: nothing happens.
        Machine("HP-TGB2", Turbine(_ => 45), 33);

        // Governor: particles grow from the oil change on.
        Machine(
            "HP-GOV1",
            at =>
            {
                var days = (at - oilChange).TotalDays;
                var four = days < 0 ? 300 * Math.Exp(0.0009 * (days + 316)) : 190 * Math.Exp(Growth * days);
                return new Levels(70, 46.1, 0.45, four, 0.28, 0.028, 4, 3, 420, 330, double.NaN);
            },
            33
        );

        // Intake-gate gearbox: heavy oil, steady water that is dissolved while it runs.
        Machine("HP-IGG1", _ => new Levels(430, 321, 0.82, 5200, 0.30, 0.035, 38, 9, 15, 280, double.NaN), 27);

        // Circulating-water pump bearing: the oil ages.
        Machine(
            "HP-CWP2",
            at =>
            {
                var days = (at - pumpCharge).TotalDays;
                return new Levels(
                    60,
                    45.8 + 0.0008 * days,
                    0.08 + AcidPerDay * days,
                    1200,
                    0.27,
                    0.03,
                    5,
                    4,
                    12,
                    45,
                    880 - RpvotPerDay * days
                );
            },
            31
        );

        // Draft-tube gate unit: wet, being dehydrated right now.
        Machine(
            "HP-DTG1",
            at => new Levels(
                at < At(2026, 4, 20) ? 120 : 120 + 14.2 * (at - At(2026, 4, 20)).TotalDays,
                46.3,
                0.5,
                2600,
                0.29,
                0.03,
                6,
                5,
                410,
                320,
                double.NaN
            ),
            29
        );

        var swapped = Swap("HP-TGB2", "HP-IGG1", At(2025, 9, 15));
        WriteLabA();
        WriteLabB();
        WriteSensorLog("sensor-HP-TGB1-2025-12.csv", bearing, turbine, 60, 50);
        WriteSensorLog("sensor-HP-DTG1-2026-06.csv", gate, hydraulic, 36, 55);
        WriteKarlFischer(("HP-TGB1", bearing, 60), ("HP-DTG1", gate, 36));
        files["truth.json"] = new Truth(
            ReturnPerDay,
            Math.Round(left, 3),
            Round(endOfCleanup.AddDays((500 - left) / ReturnPerDay)),
            bearing,
            gate,
            Growth,
            Round(oilChange.AddDays(Math.Log(2500 / 190.0) / Growth)),
            430,
            Round(pumpCharge.AddDays(0.3 / AcidPerDay)),
            Round(pumpCharge.AddDays(0.75 * 880 / RpvotPerDay)),
            swapped,
            badCells
        ).ToJson();
        return files;
    }

    /// <summary>The true levels of one oil at one moment.</summary>
    private sealed record Levels(
        double Water,
        double Viscosity,
        double Acid,
        double Four,
        double SixPerFour,
        double FourteenPerFour,
        double Iron,
        double Copper,
        double Zinc,
        double Phosphorus,
        double Rpvot
    );

    private sealed record Sample(string Machine, string Number, DateTimeOffset At, double Celsius, Levels Levels);

    private static Func<DateTimeOffset, Levels> Turbine(Func<DateTimeOffset, double> water) =>
        at => new Levels(water(at), 67.5, 0.12, 1250, 0.28, 0.03, 3, 2, 8, 40, double.NaN);

    /// <summary>Samples about every five weeks, with scatter as the test methods have it (repeatability of the usual order, invented).</summary>
    private void Machine(string id, Func<DateTimeOffset, Levels> truth, int days)
    {
        for (var at = First.AddDays(random.Next(12)); at < Now.AddDays(-4); at = at.AddDays(days + random.Next(-9, 10)))
        {
            var taken = at.AddHours(6 + random.Next(10));
            var level = truth(taken);
            samples.Add(
                new Sample(
                    id,
                    $"{(taken < LabChange ? 'A' : 'B')}-{taken:yy}-{samples.Count + 1001:0000}",
                    taken,
                    38 + 6 * random.NextDouble(),
                    level with
                    {
                        Water = Math.Max(4, level.Water + Scatter(3 + 0.03 * level.Water)),
                        Viscosity = level.Viscosity * (1 + Scatter(0.004)),
                        Acid = Math.Max(0.01, level.Acid + Scatter(0.008)),
                        Four = level.Four * Math.Exp(Scatter(0.14)),
                        SixPerFour = level.SixPerFour * Math.Exp(Scatter(0.07)),
                        FourteenPerFour = level.FourteenPerFour * Math.Exp(Scatter(0.12)),
                        Iron = Math.Max(0, level.Iron + Scatter(0.7)),
                        Copper = Math.Max(0, level.Copper + Scatter(0.6)),
                        Zinc = level.Zinc * (1 + Scatter(0.03)),
                        Phosphorus = level.Phosphorus * (1 + Scatter(0.03)),
                        Rpvot = level.Rpvot + Scatter(14),
                    }
                )
            );
        }
    }

    /// <summary>Two bottles of one round get each other's label.</summary>
    private List<string> Swap(string one, string other, DateTimeOffset around)
    {
        var first = Nearest(one, around);
        var second = Nearest(other, around);
        (samples[first], samples[second]) = (
            samples[first] with
            {
                Levels = samples[second].Levels,
            },
            samples[second] with
            {
                Levels = samples[first].Levels,
            }
        );
        return [samples[first].Number, samples[second].Number];
    }

    private int Nearest(string machine, DateTimeOffset at) =>
        Enumerable
            .Range(0, samples.Count)
            .Where(i => samples[i].Machine == machine)
            .OrderBy(i => Math.Abs((samples[i].At - at).TotalDays))
            .First();

    /// <summary>The old laboratory: semicolons, decimal commas, local dates, per cent, Saybolt seconds, °F, counts per 100 mL.</summary>
    private void WriteLabA()
    {
        var text = new StringBuilder(
            "\uFEFFSample No.;Equipment;Date sampled;Oil temp (°F);Water (%);Viscosity 40C (SUS);AN;Particles >=4 um(c) (per 100 mL);Particles >=6 um(c) (per 100 mL);Particles >=14 um(c) (per 100 mL);Fe;Cu;Zn;P;RPVOT;Appearance\r\n"
        );
        var rows = samples.Where(sample => sample.At < LabChange).OrderBy(sample => sample.At).ToList();
        for (var i = 0; i < rows.Count; i++)
        {
            var (sample, level) = (rows[i], rows[i].Levels);
            var cells = new List<string>
            {
                sample.Number,
                sample.Machine,
                sample.At.ToString("dd.MM.yyyy", CultureInfo.InvariantCulture),
                Number(sample.Celsius * 1.8 + 32, 0),
                Cell(level.Water / 1e4, 4),
                Cell(Saybolt(level.Viscosity), 1),
                Cell(level.Acid, 2),
                Cell(level.Four * 100, 0),
                Cell(level.Four * level.SixPerFour * 100, 0),
                Cell(level.Four * level.FourteenPerFour * 100, 0),
                Metal(level.Iron),
                Metal(level.Copper),
                Cell(level.Zinc, 0),
                Cell(level.Phosphorus, 0),
                RpvotCell(level.Rpvot, i),
                level.Water > 400 ? "\"hazy; water seen\"" : "clear",
            };
            Spoil(cells, i, (17, 6, "n/d?"), (29, 4, "-0,0012"), (43, 7, "12O400"));
            var row = string.Join(';', cells.Select((cell, column) => column == 2 ? cell : cell.Replace('.', ',')));
            text.Append(row).Append("\r\n");
            if (i == 20)
            {
                // The laboratory sent this row twice.
                text.Append(row).Append("\r\n");
            }
        }

        files["lab-a-2023-2024.csv"] = text.ToString();
    }

    /// <summary>The new laboratory: plain commas, ISO dates, mg/kg, cSt, counts per mL.</summary>
    private void WriteLabB()
    {
        var text = new StringBuilder(
            "Machine,Sample number,Taken at,Oil temperature [°C],Water [mg/kg],Viscosity 40 [cSt],Acid number,Particles >=4 um(c) [per mL],Particles >=6 um(c) [per mL],Particles >=14 um(c) [per mL],Iron,Copper,Zinc,Phosphorus,RPVOT [min],Remark\n"
        );
        var rows = samples.Where(sample => sample.At >= LabChange).OrderBy(sample => sample.At).ToList();
        for (var i = 0; i < rows.Count; i++)
        {
            var (sample, level) = (rows[i], rows[i].Levels);
            var cells = new List<string>
            {
                sample.Machine,
                sample.Number,
                sample.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                Number(sample.Celsius, 0),
                Cell(level.Water, 0),
                Cell(level.Viscosity, 2),
                Cell(level.Acid, 2),
                Cell(level.Four, 0),
                Cell(level.Four * level.SixPerFour, 0),
                Cell(level.Four * level.FourteenPerFour, 1),
                Metal(level.Iron),
                Metal(level.Copper),
                Cell(level.Zinc, 0),
                Cell(level.Phosphorus, 0),
                RpvotCell(level.Rpvot, i),
                i % 19 == 4 ? "\"bottle half full, retest?\"" : "",
            };
            Spoil(cells, i, (11, 3, "2000"), (52, 6, "see remark"));
            text.Append(string.Join(',', cells)).Append('\n');
        }

        files["lab-b-2025-2026.csv"] = text.ToString();
    }

    private void WriteSensorLog(
        string file,
        CleanupTruth truth,
        SaturationCurve curve,
        int hours,
        double processCelsius
    )
    {
        var text = new StringBuilder("Time,Saturation [%],Oil temperature [°C]\n");
        for (var minutes = 0; minutes <= hours * 60; minutes += 15)
        {
            var elapsed = minutes / 60.0;

            // The heater brings the oil from 35 °C to the process temperature within the first hours.
            var celsius = processCelsius - (processCelsius - 35) * Math.Exp(-elapsed / 2.2);
            var activity = Math.Min(1, truth.WaterAt(elapsed) / Saturation(curve, celsius));
            var read = Math.Min(100, 100 * activity + (activity < 1 ? Scatter(0.35) : 0));
            text.Append(truth.StartedAt.AddMinutes(minutes).ToString("yyyy-MM-ddTHH:mmZ", CultureInfo.InvariantCulture))
                .Append(',')
                .Append(minutes == 1215 ? "" : Number(read, 1))
                .Append(',')
                .Append(Number(celsius + Scatter(0.08), 1))
                .Append('\n');
        }

        files[file] = text.ToString();
    }

    private void WriteKarlFischer(params (string Machine, CleanupTruth Truth, int Hours)[] runs)
    {
        var text = new StringBuilder("Machine,Sample number,Taken at,Water [ppm]\n");
        foreach (var (machine, truth, hours) in runs)
        {
            for (var hour = 0; hour <= hours; hour += 12)
            {
                var water = truth.WaterAt(hour);
                text.Append(CultureInfo.InvariantCulture, $"{machine},KF-{machine}-{hour:00}h,")
                    .Append(truth.StartedAt.AddHours(hour).ToString("yyyy-MM-ddTHH:mmZ", CultureInfo.InvariantCulture))
                    .Append(',')
                    .Append(Number(water + Scatter(2 + 0.02 * water), 0))
                    .Append('\n');
            }
        }

        files["karl-fischer-on-site.csv"] = text.ToString();
    }

    private void Spoil(List<string> cells, int row, params (int Row, int Column, string Text)[] faults)
    {
        foreach (var fault in faults.Where(fault => fault.Row == row))
        {
            cells[fault.Column] = fault.Text;
            badCells++;
        }
    }

    private string Cell(double value, int decimals) => random.NextDouble() < 0.04 ? "" : Number(value, decimals);

    private string Metal(double value) => value < 1 ? "<1" : Cell(value, 0);

    private static string RpvotCell(double value, int row) =>
        double.IsNaN(value) || row % 2 == 1 ? "" : Number(value, 0);

    private static string Number(double value, int decimals) =>
        value.ToString("F" + decimals, CultureInfo.InvariantCulture);

    private double Scatter(double standardDeviation) =>
        standardDeviation
        * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
        * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>ASTM D2161 at 40 °C, written out here so that the data do not come from the library under demonstration.</summary>
    private static double Saybolt(double v) =>
        (4.6324 * v + (1 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * v * v + 1.646 * v * v * v) * 1e-5))
        * (1 + 0.000061 * (104 - 100));

    private static SaturationCurve Curve(double at20, double at60) =>
        SaturationCurve.FromTwoPoints(
            "invented",
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(at20),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(at60),
            Source.UserData("invented")
        );

    private static double Saturation(SaturationCurve curve, double celsius) =>
        curve.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Content.PartsPerMillion;

    private static DateTimeOffset At(int year, int month, int day, int hour = 0) =>
        new(year, month, day, hour, 0, 0, TimeSpan.Zero);

    private static DateTimeOffset Round(DateTimeOffset at) => new(at.Date, TimeSpan.Zero);
}
