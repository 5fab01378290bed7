using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.LabFiles;

namespace OilCondition.Tests.DataFrames;

public class FileAccountTests
{
    [Fact]
    public void The_frames_of_a_file_count_what_the_file_counts()
    {
        using var file = LabFile.Open(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        var account = FileAccount.Of(file);
        var whole = LabFile.Read(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        var taken = account.Records.ToLongFrame();

        var readings = ((StringDataFrameColumn)taken["measurand"]).Count(id => id is not null);
        readings.ShouldBe((int)account.Cells.Readings, "this file has no codes: a cell is a reading");
        Sum(account.Columns, "read", use => use is "reading").ShouldBe(account.Cells.Readings);
        Sum(account.Columns, "blank", _ => true).ShouldBe(account.Cells.Blank);
        Sum(account.Columns, "refused", _ => true).ShouldBe(account.Cells.Rejected);
        ((StringDataFrameColumn)account.Problems["reason"]).ShouldBe(
            whole.Problems.Concat(whole.Doubts).Select(problem => problem.Reason)
        );
        ((Int32DataFrameColumn)account.Problems["line"]).ShouldBe(
            whole.Problems.Concat(whole.Doubts).Select(problem => (int?)problem.Line)
        );
        account
            .Problems["outcome"]
            .ElementwiseEquals("refused")
            .Count(isSo => isSo == true)
            .ShouldBe(whole.Problems.Count);
    }

    [Fact]
    public void A_file_that_was_read_as_a_whole_gives_the_same_but_for_lines()
    {
        using var file = LabFile.Open(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        var byRow = FileAccount.Of(file);
        var whole = FileAccount.Of(LabFile.Read(HarrowPointFleet.LabFilePath, ColumnMap.Default));

        whole.Cells.ShouldBe(byRow.Cells);
        Text(whole.Problems).ShouldBe(Text(byRow.Problems));
        Text(whole.Columns).ShouldBe(Text(byRow.Columns));
        whole.Records.ToWideFrame()["line"].NullCount.ShouldBe(whole.Records.ToWideFrame().Rows.Count);
        foreach (var id in whole.Records.MachineIds)
        {
            whole
                .Records.SamplesOf(id)
                .Select(one => one.ToString())
                .ShouldBe(byRow.Records.SamplesOf(id).Select(one => one.ToString()));
        }
    }

    [Fact]
    public void A_sensor_log_keeps_the_texts_of_its_rows_and_needs_no_machine()
    {
        const string Log = "Time,Oil temperature [°C],Status\n2026-03-14 06:15,45,ok\n2026-03-14 06:16,x,fault\n";
        using var file = SensorLog.Open(new StringReader(Log), "log.csv", ColumnMap.Default);
        var account = FileAccount.Of(file);
        var wide = account.Records.ToWideFrame();

        ((StringDataFrameColumn)wide["text: Status"]).ShouldBe(["ok", "fault"]);
        ((StringDataFrameColumn)wide["origin"]).ShouldBe(["sensor", "sensor"]);
        ((Int32DataFrameColumn)wide["line"]).ShouldBe([2, 3]);
        account.Problems["cell"][0].ShouldBe("x");
        foreach (
            var back in (OilRecords[])[OilRecords.FromWide(wide), OilRecords.FromLong(account.Records.ToLongFrame())]
        )
        {
            back.SensorReadingsOf("").Count.ShouldBe(2);
            ((StringDataFrameColumn)back.ToWideFrame()["text: Status"]).ShouldBe(["ok", "fault"]);
        }

        OilRecords
            .Of(SensorLog.Read(new StringReader(Log), "log.csv", ColumnMap.Default))
            .SensorReadingsOf("")
            .Count.ShouldBe(2);
    }

    [Fact]
    public void Records_and_account_print_what_they_hold()
    {
        using var file = LabFile.Open(
            new StringReader("Machine,Sample No,Date,Iron [ppm]\nM1,S1,2026-03-14,5\nM2,S2,2026-03-14,-5\n"),
            "lab.csv",
            ColumnMap.Default
        );

        FileAccount
            .Of(file)
            .ToString()
            .ShouldBe(
                "2 records of 2 machines, 0 problems; 1 rows of problems; 8 cells: 6 keys, 1 readings, 0 blank, 1 rejected, 0 texts"
            );
    }

    [Fact]
    public void Rows_are_read_once()
    {
        using var file = LabFile.Open(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        _ = FileAccount.Of(file);
        Should.Throw<InvalidOperationException>(() => FileAccount.Of(file));
    }

    private static long Sum(DataFrame columns, string name, Predicate<string> of) =>
        ((StringDataFrameColumn)columns["use"])
            .Zip((Int32DataFrameColumn)columns[name])
            .Where(pair => of(pair.First))
            .Sum(pair => (long)pair.Second!);

    private static string Text(DataFrame frame) => frame.ToString(frame.Rows.Count);
}
