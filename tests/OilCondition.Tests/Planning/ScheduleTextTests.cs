using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>What plans print, against texts written by hand.</summary>
public class ScheduleTextTests
{
    [Fact]
    public void A_plan_prints_itself()
    {
        var planned = Planned(
            [
                Task("HP-TGB1", 20, due: 20, weight: 2, connect: 2, heatUp: 3, disconnect: 1),
                Task("HP-CWP2", 13, due: 60, place: "dam", connect: 2, disconnect: 1),
            ],
            Unit(WorkWindow.Daily(At(0), At(8), 10), travel: Travel(("hall", "dam", 1)))
        );

        planned
            .ToString()
            .ShouldBe(
                """
                Next: HP-TGB1; leave hall 2026-03-02 06:00, connect 2026-03-02 06:00.
                Weighted lateness 10 h: optimal.
                Rule of urgency: 10 h, the plan saves 0 h. Earliest due date first: 10 h, the plan saves 0 h.
                VDU-1 from 2026-03-02 06:00 (UTC+00:00), free after 49 h
                    machine  travel  connect      treat        treated      free         to due   waits
                  1 HP-TGB1     0 h  03-02 06:00  03-02 11:00  03-03 07:00  03-03 08:00      -5
                  2 HP-CWP2     1 h  03-03 09:00  03-03 11:00  03-04 00:00  03-04 07:00      18   6c
                Advice: people decide, and check access, permits, isolation and makers' limits first.
                """
            );
        planned
            .Schedule.ToCalendar()
            .ShouldBe(
                """
                                02  03  04
                HP-TGB1         .PPPPP......
                HP-CWP2         .....PPPcc..

                six hours a letter: t travel, c connected, P treatment, w waiting, - closed, x unit unavailable
                """
            );
    }

    [Fact]
    public void No_line_is_wider_than_a_hundred_columns()
    {
        var tasks = Enumerable
            .Range(0, 12)
            .Select(i =>
                Task(
                    $"HP-machine with a long name {i}",
                    300,
                    -5000,
                    1000,
                    connect: 2,
                    disconnect: 3,
                    windows: [Hours(100, 9000)]
                )
            )
            .ToList();
        var outcome = Planned(
            tasks,
            Unit(WorkWindow.Daily(At(0), At(8), 400)),
            new SchedulingOptions(Start, effort: 0.1)
        );

        var lines = $"{outcome}\n{outcome.Schedule.ToCalendar()}".Split('\n');
        lines.Max(line => line.Length).ShouldBeInRange(90, 100);
    }

    [Theory]
    [InlineData("HP-X at hall: 12 h, due 2026-03-04 08:00, weight 3", 0)]
    [InlineData("VDU-1 at hall, treating HP-X", 1)]
    [InlineData("2026-03-02 06:00 to 2026-03-03 06:00", 2)]
    [InlineData("HP-X until 2026-03-02 09:00", 3)]
    [InlineData("1 travel times, the way back takes as long unless stated", 4)]
    [InlineData(
        "HP-X: leave hall 2026-03-02 06:00, connect 2026-03-02 06:00, treated 2026-03-02 17:00, free 2026-03-02 18:00, 39 h slack",
        5
    )]
    public void Each_type_prints_itself(string text, int which)
    {
        var task = Task("HP-X", 10, 50, 3, connect: 1, disconnect: 1);
        var running = new RunningVisit(task, At(0), At(3));
        object[] printed =
        [
            task,
            Unit(running: running),
            Hours(0, 24),
            running,
            Travel(("hall", "dam", 2)),
            Planned([task]).Schedule.Visits[0],
        ];

        printed[which].ToString().ShouldBe(text);
    }
}
