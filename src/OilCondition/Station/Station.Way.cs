using OilCondition.Text;

namespace OilCondition;

public sealed partial class Station
{
    /// <summary>How long a mobile unit takes from one place of the plant to another, packing and unpacking included.</summary>
    public sealed record Way
    {
        /// <summary>States a way.</summary>
        /// <param name="from">Where it begins, as the machines' places are named.</param>
        /// <param name="to">Where it ends, another place.</param>
        /// <param name="time">How long it takes, 0 to 8784 h.</param>
        /// <exception cref="ArgumentException">A place is blank, or both are the same.</exception>
        /// <exception cref="ArgumentOutOfRangeException">The time is out of range.</exception>
        public Way(string from, string to, TimeSpan time)
        {
            From = Guard.NotBlank(from);
            To = Guard.NotBlank(to);
            Guard.InRange(time.TotalHours, 0, 8784, "h", nameof(time));
            Time = time;
            if (from == to)
            {
                throw new ArgumentException($"to is {to}, as from is; allowed: another place.", nameof(to));
            }
        }

        /// <summary>Where it begins.</summary>
        public string From { get; }

        /// <summary>Where it ends.</summary>
        public string To { get; }

        /// <summary>How long it takes.</summary>
        public TimeSpan Time { get; }

        /// <summary>Places and hours.</summary>
        /// <returns>For example <c>hall to dam, 2 h</c>.</returns>
        public override string ToString() => $"{From} to {To}, {PlainText.Number(Time.TotalHours)} h";
    }
}
