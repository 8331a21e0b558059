using Cornerwright.Garage.Access;
using Cornerwright.Garage.Access.Starting;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Access;

public sealed class AccessTests
{
    // Coarse pitches: ISO 261.
    [Theory]
    [InlineData("M8", 8, 1.25)]
    [InlineData("M12x1.5", 12, 1.5)]
    [InlineData(" m14 × 1,5 ", 14, 1.5)]
    [InlineData("M10X1.25", 10, 1.25)]
    public void Threads_are_read_as_written(string typed, double diameterMm, double pitchMm)
    {
        var thread = ThreadDesignation.Parse(typed, "thread").Value;
        Assert.Equal(diameterMm / 1000, thread.Diameter, 1e-12);
        Assert.Equal(pitchMm / 1000, thread.Pitch, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("12")]
    [InlineData("M")]
    [InlineData("M12x")]
    [InlineData("M12x1.5x2")]
    [InlineData("M12x9")]
    [InlineData("M1000")]
    [InlineData("M13")]
    [InlineData("M-8")]
    [InlineData("MNaN")]
    [InlineData("M1e9")]
    public void What_is_no_thread_is_refused_with_a_mend(string typed)
    {
        var problem = Assert.Single(ThreadDesignation.Parse(typed, "thread").Problems);
        Assert.Equal(("thread", typed), (problem.Field, problem.Given));
        Assert.Contains("M12x1.5", problem.Allowed, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Cure);
    }

    private static Fastener Bolt(string torque, string thread = "M12x1.5", string name = "10.9") =>
        new() { Id = "b", Name = "Bolt", Thread = thread, Class = name, Torque = Reading.Of(torque, Dimension.Torque) };

    [Fact]
    public void A_torque_outside_the_band_is_warned_of_in_words()
    {
        Assert.Equal("", TorqueSense.Warning(Bolt("110 N·m")));
        Assert.Contains("beyond its yield", TorqueSense.Warning(Bolt("110 kgf·m")), StringComparison.Ordinal);
        Assert.Contains("hardly stretches", TorqueSense.Warning(Bolt("9 N·m")), StringComparison.Ordinal);
        Assert.Equal("", TorqueSense.Warning(Bolt("9 N·m") with { ThenTurn = Reading.Of("90 deg", Dimension.Angle) }));
        Assert.Equal("", TorqueSense.Warning(Bolt("9 N·m", name: "")));
        Assert.Equal("", TorqueSense.Warning(new Fastener()));
    }

    [Fact]
    public void A_torque_is_shown_in_both_units_or_left_to_the_maker()
    {
        Assert.Equal("34 N·m (25 lbf·ft)", TorqueSense.Words(Bolt("25 lbf·ft")));
        Assert.Equal("85 N·m (63 lbf·ft), then 90° further",
            TorqueSense.Words(Bolt("85 N·m") with { ThenTurn = Reading.Of("90 deg", Dimension.Angle) }));
        Assert.Equal("maker's figure", TorqueSense.Words(new Fastener()));
    }

    public static TheoryData<StartingKind, AxlePlace> Kinds
    {
        get
        {
            var data = new TheoryData<StartingKind, AxlePlace>();
            foreach (var kind in Enum.GetValues<StartingKind>())
            {
                data.Add(kind, AxlePlace.Front);
                data.Add(kind, AxlePlace.Rear);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_starting_graph_hangs_together_and_says_where_its_numbers_come_from(StartingKind kind, AxlePlace axle)
    {
        var graph = StartingGraph.WithAxle(new AccessGraph(), kind, axle, driven: true);
        Assert.Empty(AccessCheck.Problems(graph));
        Assert.All(graph.Components, c => Assert.Equal(StartingGraph.Practice, c.Source));
        Assert.All(graph.Components.SelectMany(c => c.Fasteners).Where(f => f.Torque is not null), f =>
        {
            Assert.Equal(StartingGraph.Practice, f.TorqueFrom);
            Assert.Equal("", TorqueSense.Warning(f));
        });
        Assert.All(graph.Components.Where(c => c.Role == BuildRole.Stack), c =>
            Assert.Contains(c.Hazards, h => h.Kind == HazardKind.SpringEnergy));
        foreach (var role in new[] { BuildRole.Wheel, BuildRole.Spacer, BuildRole.Stack, BuildRole.Perch, BuildRole.TopMount,
            BuildRole.Damper, BuildRole.BumpStop })
        {
            Assert.Single(graph.Components, c => c.Role == role);
        }
    }

    [Fact]
    public void A_reference_that_leads_nowhere_and_a_class_nobody_makes_are_refused()
    {
        var car = DemoCar.Read();
        var strut = car.Access.Find("f-strut")!;
        var broken = strut with
        {
            BeforeOff = [.. strut.BeforeOff, new Prerequisite { Component = "f-nothing" }],
            Fasteners = [strut.Fasteners[0] with { Class = "7.7", Thread = "12 fine" }],
        };
        var graph = car.Access with { Components = [.. car.Access.Components.Select(c => c.Id == "f-strut" ? broken : c)] };
        var problems = CarFile.Read(CarFile.Write(car with { Access = graph })).Problems;
        Assert.Contains(problems, p => p.Given == "f-nothing");
        Assert.Contains(problems, p => p.Given == "7.7" && p.Allowed.Contains("10.9", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Given == "12 fine");
        Assert.Equal(3, problems.Count);
    }

    [Fact]
    public void Every_torque_of_the_demo_is_given_and_makes_sense()
    {
        var fasteners = DemoCar.Read().Access.Components.SelectMany(c => c.Fasteners).ToList();
        Assert.NotEmpty(fasteners);
        Assert.All(fasteners, f => Assert.NotNull(f.Torque));
        Assert.All(fasteners, f => Assert.Equal("", TorqueSense.Warning(f)));
        Assert.All(fasteners, f => Assert.NotEmpty(f.TorqueFrom));
    }
}
