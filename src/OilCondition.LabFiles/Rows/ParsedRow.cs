namespace OilCondition.LabFiles;

/// <summary>One row of a file: what was taken over, and what was not.</summary>
internal sealed class ParsedRow(string sheet, int line)
{
    private List<FileProblem>? problems;
    private List<FileProblem>? doubts;

    public string Sheet => sheet;

    public int Line => line;

    /// <summary>Whether the row was taken over, perhaps without some of its cells.</summary>
    public bool IsTaken { get; set; }

    public string MachineId { get; set; } = "";

    public string SampleNumber { get; set; } = "";

    public DateTimeOffset At { get; set; }

    /// <summary>The readings; they last until the next row is read.</summary>
    public RowReadings? Readings { get; set; }

    public Dictionary<string, string>? Texts { get; set; }

    public IReadOnlyList<FileProblem> Problems => problems ?? (IReadOnlyList<FileProblem>)[];

    public IReadOnlyList<FileProblem> Doubts => doubts ?? (IReadOnlyList<FileProblem>)[];

    public void Refuse(FileProblem problem) => (problems ??= []).Add(problem);

    public void Doubt(FileProblem doubt) => (doubts ??= []).Add(doubt);
}
