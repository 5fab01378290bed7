using System.Text;
using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>What came of planning: exactly one of the nested cases.</summary>
public abstract class ScheduleOutcome
{
    private ScheduleOutcome(UnitSchedule byUrgency, UnitSchedule byDueDate)
    {
        ByUrgency = byUrgency;
        ByDueDate = byDueDate;
    }

    /// <summary>
    /// The plan of a plain rule: next the machine with the most weight per hour until it is done, less so the more slack it has (Vepsalainen and Morton 1987,
    /// apparent tardiness cost, from memory).
    /// </summary>
    public UnitSchedule ByUrgency { get; }

    /// <summary>The plan of the plainest rule: next the machine that is due first.</summary>
    public UnitSchedule ByDueDate { get; }

    /// <summary>All machines fit.</summary>
    public sealed class Planned : ScheduleOutcome
    {
        internal Planned(
            UnitSchedule schedule,
            UnitSchedule byUrgency,
            UnitSchedule byDueDate,
            double lateByAtMost,
            TimeSpan freeLaterByAtMost,
            bool isSearched
        )
            : base(byUrgency, byDueDate)
        {
            Schedule = schedule;
            MostWeightedHoursFromBest = lateByAtMost;
            MostUnitHoursFromBest = freeLaterByAtMost;
            IsSearched = isSearched;
        }

        /// <summary>The plan.</summary>
        public UnitSchedule Schedule { get; }

        /// <summary>By how many weighted hours the best plan can be better at most; 0 where the plan is proven to be the best.</summary>
        public double MostWeightedHoursFromBest { get; }

        /// <summary>Whether no plan has less weighted lateness.</summary>
        public bool IsOptimal => MostWeightedHoursFromBest == 0;

        /// <summary>By how much earlier the unit can be free at most in a plan with no more weighted lateness than this one.</summary>
        public TimeSpan MostUnitHoursFromBest { get; }

        /// <summary>Whether the solver searched. Without effort, or where its native library is missing, the plan is the better rule's, improved by moves and swaps as far as the effort goes.</summary>
        public bool IsSearched { get; }

        /// <summary>Weighted hours that the plan saves against the rule of urgency; null where that rule's plan does not fit.</summary>
        public double? GainOverUrgency => GainOver(ByUrgency);

        /// <summary>Weighted hours that the plan saves against the rule of due dates; null where that rule's plan does not fit.</summary>
        public double? GainOverDueDate => GainOver(ByDueDate);

        /// <inheritdoc/>
        public override string ToString()
        {
            var text = new StringBuilder();
            var next = Schedule.Next;
            AppendWrapped(
                text,
                next is null
                    ? "Next: nothing is left to visit."
                    : $"Next: {next.Task.Id}; leave {next.TravelFrom} {PlainText.Time(next.Leave)}, connect {PlainText.Time(next.ConnectStart)}."
            );
            AppendWrapped(
                text,
                IsOptimal
                    ? $"Weighted lateness {Hours(Schedule.WeightedLatenessHours)}: optimal."
                    : $"Weighted lateness {Hours(Schedule.WeightedLatenessHours)}: at most {Hours(MostWeightedHoursFromBest)} from the best."
            );
            AppendWrapped(
                text,
                $"Rule of urgency: {RuleWord(ByUrgency, GainOverUrgency)}. Earliest due date first: {RuleWord(ByDueDate, GainOverDueDate)}."
            );
            if (!IsSearched)
            {
                AppendWrapped(text, "The solver did not search: this is a rule's plan, improved by moves and swaps.");
            }

            text.Append(Schedule).Append('\n');
            AppendWrapped(
                text,
                "Advice: people decide, and check access, permits, isolation and makers' limits first."
            );
            return text.ToString().TrimEnd('\n');
        }

        private double? GainOver(UnitSchedule rule) =>
            rule.Course.Cost.Fits ? rule.WeightedLatenessHours - Schedule.WeightedLatenessHours : null;

        private static string RuleWord(UnitSchedule rule, double? gain) =>
            gain is { } saved ? $"{Hours(rule.WeightedLatenessHours)}, the plan saves {Hours(saved)}" : "does not fit";
    }

    /// <summary>Not all machines fit.</summary>
    public sealed class DoesNotFit : ScheduleOutcome
    {
        internal DoesNotFit(
            IReadOnlyList<Misfit> misfits,
            bool isProven,
            UnitSchedule nearest,
            UnitSchedule byUrgency,
            UnitSchedule byDueDate
        )
            : base(byUrgency, byDueDate)
        {
            Misfits = misfits;
            IsProven = isProven;
            Nearest = nearest;
        }

        /// <summary>The machines that do not fit, and by how much: alone if there are such, else in the nearest plan.</summary>
        public IReadOnlyList<Misfit> Misfits { get; }

        /// <summary>Whether it is proven that no plan fits; otherwise none was found.</summary>
        public bool IsProven { get; }

        /// <summary>The nearest plan that was found: fewest machines left out, then fewest hours past latest ends.</summary>
        public UnitSchedule Nearest { get; }

        /// <inheritdoc/>
        public override string ToString()
        {
            var text = new StringBuilder();
            AppendWrapped(text, IsProven ? "Not all machines fit:" : "No plan was found in which all machines fit:");
            foreach (var misfit in Misfits)
            {
                AppendWrapped(text, $"- {misfit}");
            }

            text.Append("The nearest plan:\n").Append(Nearest).Append('\n');
            AppendWrapped(text, "Advice: people decide which machine waits, which window is moved or who is hired.");
            return text.ToString().TrimEnd('\n');
        }
    }

    private static string Hours(double hours) => $"{PlainText.Number(hours)} h";

    private static void AppendWrapped(StringBuilder text, string sentence)
    {
        foreach (var line in PlainText.Wrap(sentence, ""))
        {
            text.Append(line).Append('\n');
        }
    }
}
