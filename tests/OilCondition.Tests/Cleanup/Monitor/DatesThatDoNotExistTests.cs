using System.Collections;
using System.Reflection;
using OilCondition.Cleanup;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Nobody can read a date that does not exist.</summary>
public class DatesThatDoNotExistTests
{
    /// <summary>Moments that every run has: its start, its readings, its end.</summary>
    private static readonly string[] OfEveryRun =
    [
        "StartedAt",
        "Start",
        "AsOf",
        "End",
        "Origin",
        "FirstReadingAt",
        "LastReadingAt",
        "At",
    ];

    [Fact]
    public void A_stalled_run_has_no_date_but_those_of_its_readings()
    {
        var status = CleanupMonitor.Of(LiveRuns.Warm(targetPpm: 50), LiveRuns.WholeRun()).Status();
        status.Phase.ShouldBe(CleanupPhase.Stalled);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        var facts = new CleanupRunFacts("HP-TGB1", LiveRuns.Loop, LiveRuns.Oil870, LiveRuns.Ppm(900));

        Dates(status).Except(OfEveryRun, StringComparer.Ordinal).ShouldBeEmpty();
        Dates(CleanupRecord.Of(status, facts)).Except(OfEveryRun, StringComparer.Ordinal).ShouldBeEmpty();
    }

    [Fact]
    public void A_run_without_readings_has_only_its_start()
    {
        var status = new CleanupMonitor(LiveRuns.Warm()).Status();

        Dates(status).Except(OfEveryRun, StringComparer.Ordinal).ShouldBeEmpty();
        status.Latest.ShouldBeNull();
        status.Temperature.ShouldBeNull();
        status.LowestTemperature.ShouldBeNull();
        status.LatestParticles.ShouldBeNull();
        status.RelativeSaturationAtReference.ShouldBeNull();
    }

    /// <summary>The check sees the dates of a run that has them.</summary>
    [Fact]
    public void A_run_that_is_met_has_its_dates()
    {
        var status = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun()).Status();

        Dates(status).ShouldContain("MetAt");
        Dates(status).ShouldContain("HoldingSince");
        Dates(status).ShouldContain("At");
    }

    /// <summary>Names of all public properties, at any depth, that hold a moment.</summary>
    private static List<string> Dates(object answer)
    {
        var found = new List<string>();
        Walk(answer, found, new HashSet<object>(ReferenceEqualityComparer.Instance));
        return found;
    }

    private static void Walk(object? value, List<string> found, HashSet<object> seen)
    {
        if (value is null or string or Enum || !seen.Add(value))
        {
            return;
        }

        if (value is IEnumerable items)
        {
            foreach (var item in items)
            {
                Walk(item, found, seen);
            }

            return;
        }

        if (value.GetType().Namespace?.StartsWith("OilCondition", StringComparison.Ordinal) != true)
        {
            return;
        }

        foreach (
            var property in value
                .GetType()
                .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(property => property.GetIndexParameters().Length == 0)
        )
        {
            if (property.GetValue(value) is DateTimeOffset)
            {
                found.Add(property.Name);
            }
            else
            {
                Walk(property.GetValue(value), found, seen);
            }
        }
    }
}
