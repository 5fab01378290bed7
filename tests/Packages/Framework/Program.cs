using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Threading;
using OilCondition;
using OilCondition.Charts;
using OilCondition.Contracts;
using OilCondition.ControlCharts;
using OilCondition.LabFiles;
using OilCondition.Reporting;
using OilCondition.Water;
using UnitsNet;

namespace PlugIn
{
    /// <summary>The main job from .NET Framework, with an integrator's C# 7.3; every figure is invented.</summary>
    internal static class Program
    {
        private const string Mark = "\n---\n";

        private static int Main()
        {
            // A German workstation must read and write the same as any other.
            Thread.CurrentThread.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var folder = Path.Combine(Path.GetTempPath(), "plug-in-" + Guid.NewGuid().ToString("N"));
            Directory.CreateDirectory(folder);
            try
            {
                var requests = new Dictionary<string, JournalChange>();
                var first = Run(folder, requests);
                var count = requests.Count;
                Run(folder, requests);
                return
                    Check("one work request, not two", count == 1 && requests.Count == 1)
                    & Check("its key", requests.Values.First().Key == "PLANT%2FTURB%2F01/2026-01-10/water")
                    & Check("its text", requests.Values.First().Sentence.Contains("250 mg/kg"))
                    & Check("the same report each time", first == Run(folder, requests))
                    & Check("the document without the library", Document(first))
                    & Check("saturation", Saturation())
                    & Check("a control chart", Chart())
                    & Check("texts with the hash " + Hash(first), true)
                    & Check("a picture with the hash " + Hash(Picture()), true)
                    ? 0
                    : 1;
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        private static string Run(string folder, Dictionary<string, JournalChange> requests)
        {
            var labFile = new StringReader("Machine,Sample No,Date,Water [ppm]\nPLANT/TURB/01,S1,2026-03-14,250\n");
            var journalFile = Path.Combine(folder, "journal.json");
            var limitText =
                "{ \"name\": \"first\", \"limits\": [ { \"measurand\": \"water-content\", \"kind\": \"absolute\","
                + " \"upper\": { \"alert\": 200 }, \"source\": { \"kind\": \"user-data\", \"text\": \"invented\" } } ] }";
            var asOf = new DateTimeOffset(2026, 3, 20, 0, 0, 0, TimeSpan.Zero);
            var change = new OilChange(new DateTimeOffset(2026, 1, 10, 8, 0, 0, TimeSpan.Zero));

            // snippet
            var oil = new Oil("invented oil", new Dictionary<Measurand, Reading>());
            var machine = new Machine(
                "PLANT/TURB/01",
                "turbine bearing",
                oil,
                Volume.FromLiters(500),
                Temperature.FromDegreesCelsius(60),
                Temperature.FromDegreesCelsius(20)
            );
            var samples = LabFile.Read(labFile, "lab.csv", ColumnMap.Default).SamplesOf(machine.Id);
            var history = OilHistory.Create(machine, samples, new SensorReading[0], new OilEvent[] { change });
            var assessment = ConditionAssessor.Assess(history, LimitSet.Parse(limitText), new AssessmentOptions(asOf));

            var journal = AlertJournal.Load(journalFile).Reconcile(assessment);
            journal.Save(journalFile);
            foreach (var pending in journal.Pending)
            {
                if (!requests.ContainsKey(pending.Id))
                {
                    requests.Add(pending.Id, pending);
                }

                journal = journal.Confirm(pending.Id, "WO-" + requests.Count);
                journal.Save(journalFile);
            }
            // end

            return assessment.ToJson() + Mark + ConditionReport.ToHtml("Oil condition", new[] { assessment });
        }

        private static bool Document(string text)
        {
            var json = text.Substring(0, text.IndexOf(Mark, StringComparison.Ordinal));
            var document = JsonSerializer.Deserialize(json, ContractJson.Default.AssessmentDocument);
            return document.Problems.Single().Findings.Single(one => one.Code == "limit-passed").Reading.Value == 250;
        }

        private static SaturationCurve Curve()
        {
            return SaturationCurve.FromTwoPoints(
                "invented oil",
                Temperature.FromDegreesCelsius(20),
                MassFraction.FromPartsPerMillion(100),
                Temperature.FromDegreesCelsius(60),
                MassFraction.FromPartsPerMillion(400),
                Source.UserData("invented")
            );
        }

        private static bool Saturation()
        {
            return Math.Abs(Curve().SaturationAt(Temperature.FromDegreesCelsius(60)).Content.PartsPerMillion - 400)
                < 1e-6;
        }

        private static string Picture()
        {
            var chart = SaturationChart.Of(
                Curve(),
                Temperature.FromDegreesCelsius(60),
                Temperature.FromDegreesCelsius(20),
                MassFraction.FromPartsPerMillion(250)
            );
            return chart.ToSvg() + Convert.ToBase64String(chart.ToPng());
        }

        private static bool Chart()
        {
            return IndividualsChart.Of(new double[] { 10, 11, 9, 10, 11, 10, 9, 30 }).Mean > 10;
        }

        private static string Hash(string text)
        {
            using (var algorithm = SHA256.Create())
            {
                return BitConverter.ToString(algorithm.ComputeHash(Encoding.UTF8.GetBytes(text)));
            }
        }

        private static bool Check(string what, bool holds)
        {
            Console.WriteLine((holds ? "holds: " : "FAILED: ") + what);
            return holds;
        }
    }
}
