using System.Globalization;

namespace OilCondition.Text;

/// <summary>
/// A kind of JSON document. Its root says which it is and of which version, as <c>"format": "oilcondition/limit-set", "version": "1.0"</c>. The
/// first figure rises when a reader of the old version would misread the new one, the second when fields are added.
/// </summary>
internal sealed class JsonFormat
{
    /// <summary>The fields of the root that belong to no document in particular; <c>$schema</c> is for editors.</summary>
    public static readonly string[] RootFields = ["$schema", "format", "version"];

    public static readonly JsonFormat Assessment = new("assessment", "assessment");
    public static readonly JsonFormat CleanupRecord = new("cleanup-record", "cleanup record");
    public static readonly JsonFormat ColumnMap = new("column-map", "column map");
    public static readonly JsonFormat Decision = new("decision", "decision");
    public static readonly JsonFormat History = new(
        "history",
        "history",
        "an object with 'machine', 'samples', 'sensorReadings' and 'events' is expected."
    );

    public static readonly JsonFormat Journal = new(
        "journal",
        "journal",
        "an object with the list 'alerts' is expected.",
        keepsUnknown: true
    );

    public static readonly JsonFormat LimitSet = new(
        "limit-set",
        "limit set",
        "an object with 'name' and 'limits' is expected."
    );

    public static readonly JsonFormat Station = new(
        "station",
        "station file",
        "an object with 'name', 'oils' and 'machines' is expected."
    );

    public static readonly JsonFormat TargetCodes = new(
        "target-codes",
        "set of target codes",
        "an object with 'name' and 'targets' is expected."
    );

    private const int Major = 1;
    private const int Minor = 0;

    private JsonFormat(string id, string what, string expected = "an object is expected.", bool keepsUnknown = false)
    {
        Id = "oilcondition/" + id;
        What = what;
        Expected = expected;
        KeepsUnknown = keepsUnknown;
    }

    /// <summary>What the root says in its field <c>format</c>.</summary>
    public string Id { get; }

    /// <summary>What the root says in its field <c>version</c>, when this library writes it.</summary>
    public string Version { get; } = FormattableString.Invariant($"{Major}.{Minor}");

    /// <summary>What it is called in messages.</summary>
    public string What { get; }

    /// <summary>What the root should be, for the fault.</summary>
    public string Expected { get; }

    /// <summary>
    /// Whether a field that nobody knows is passed over: programs write and keep such a document, and may add to it. What people write by hand is
    /// refused there, since a misspelt field must not be lost.
    /// </summary>
    public bool KeepsUnknown { get; }

    /// <summary>Whether the document is one that can be read; if not, its faults are named.</summary>
    /// <param name="root">The root; format and version may be left out.</param>
    /// <param name="isNewer">Whether fields were added since the version that is known here.</param>
    public bool IsReadable(JsonEntry root, out bool isNewer)
    {
        isNewer = false;
        var format = root.Has("format") ? root.Text("format") : Id;
        if (format is not null && !string.Equals(format, Id, StringComparison.Ordinal))
        {
            root.Fault("format", $"'{format}'; expected is '{Id}': this is another document.");
            return false;
        }

        if (!root.Has("version") || root.Text("version") is not { } version)
        {
            return root.IsFaultless;
        }

        var figures = version.Split('.');
        if (
            figures.Length != 2
            || !int.TryParse(figures[0], NumberStyles.None, CultureInfo.InvariantCulture, out var major)
            || !int.TryParse(figures[1], NumberStyles.None, CultureInfo.InvariantCulture, out var minor)
            || major < 1
        )
        {
            root.Fault("version", $"'{version}' is not a version such as {Version}.");
            return false;
        }

        if (major > Major)
        {
            root.Fault(
                "version",
                $"'{version}'; allowed: {Major}.0 to {Major}.x. It was written by a newer OilCondition: read it with that."
            );
            return false;
        }

        isNewer = minor > Minor;
        return true;
    }
}
