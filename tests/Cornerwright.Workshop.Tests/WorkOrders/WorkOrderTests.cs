using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.WorkOrders;

namespace Cornerwright.Workshop.Tests.WorkOrders;

public sealed class WorkOrderTests
{
    private static readonly Car Wagtail = DemoCar.Read();

    private static Build Both(Build build, AxlePlace axle, Func<CornerBuild, CornerBuild> change) =>
        Places.Corners.Where(c => c.Axle() == axle)
        .Aggregate(build, (b, c) => b.With(c, change(b.At(c)))) with { Id = "proposed", Name = "Proposed" };

    private static WorkOrder Write(Build from, Build to) => OrderWriter.Write(Wagtail, from, to).Value;

    private static WorkOrder Springs()
    {
        var from = Wagtail.Build("touring")!;
        return Write(from, Both(from, AxlePlace.Front, c =>
            c with { Stack = ["f-helper", "f-adapter", "f-6-250"], PerchHeight = Reading.Of("294 mm", Dimension.Length) }));
    }

    private static WorkOrder Wheels()
    {
        var from = Wagtail.Build("now")!;
        var to = Both(from, AxlePlace.Front, c => c with { Wheel = "w-gravel", Tyre = "t-gravel-55", Spacer = "sp-8" });
        return Write(from, Both(to, AxlePlace.Rear, c => c with { Wheel = "w-gravel", Tyre = "t-gravel-55", Spacer = "sp-5" }));
    }

    private static WorkOrder Mounts()
    {
        var from = Wagtail.Build("now")!;
        return Write(from, Both(from, AxlePlace.Front, c => c with { TopMount = "m-ball" }));
    }

    public static TheoryData<string> Jobs => ["springs", "wheels", "mounts", "everything"];

    private static WorkOrder Of(string job) => job switch
    {
        "springs" => Springs(),
        "wheels" => Wheels(),
        "mounts" => Mounts(),
        _ => Write(Wagtail.Build("now")!, Wagtail.Build("gravel-3")!),
    };

    private static string[] Ids(WorkOrder order, OrderPhase phase) => [.. order.Steps.Where(s => s.Phase == phase).Select(s => s.Id)];

    [Fact]
    public void Wheels_and_spacers_touch_nothing_but_wheels()
    {
        var order = Wheels();
        Assert.Equal(
            ["off/f-wheel/front-left", "off/f-wheel/front-right", "off/r-wheel/rear-left", "off/r-wheel/rear-right"],
            Ids(order, OrderPhase.TakeOff));
        Assert.Equal(
            ["on/f-spacer/front-right", "on/f-wheel/front-right", "on/f-spacer/front-left", "on/f-wheel/front-left"],
            Ids(order, OrderPhase.Fit).Take(4));
        Assert.Contains(order.Steps, s => s.Id == "prepare/tyres");
        Assert.DoesNotContain(order.Steps, s => s.Id == "set/alignment");
        Assert.Equal(4, order.Steps.Count(s => s.Id.StartsWith("ride/", StringComparison.Ordinal)));
    }

    [Fact]
    public void Springs_need_the_strut_out_and_apart_and_the_rear_axle_is_left_alone()
    {
        var order = Springs();
        Assert.Equal(
            ["off/f-brace", "off/f-wheel/front-left", "off/f-hose/front-left", "off/f-sensor/front-left", "off/f-link-end/front-left"],
            Ids(order, OrderPhase.TakeOff).Take(5));
        Assert.DoesNotContain(order.Steps, s => s.Id.Contains("/r-", StringComparison.Ordinal)
            || s.Id.Contains("f-stop", StringComparison.Ordinal) || s.Id.Contains("f-link/", StringComparison.Ordinal));
        Assert.Contains(order.Steps, s =>
            s.Id == "tight/f-perch/front-left" && s.Details.Any(d => d.Contains("294 mm (was 280 mm)", StringComparison.Ordinal)));
        Assert.Contains(order.Steps, s => s.Id == "set/alignment");
        Assert.Contains(order.Steps, s => s.Id == "later/settle");
        Assert.Contains("2 new: rod's top nut (front)", order.Consumables);
        Assert.Contains("spring compressor", order.Tools);
    }

    [Fact]
    public void A_new_strut_with_everything_new_on_it_leaves_the_old_one_whole()
    {
        var order = Of("everything");
        Assert.DoesNotContain(order.Steps, s => s.Phase == OrderPhase.TakeOff && s.Node?.Component
            is "f-mount" or "f-spring" or "f-stop" or "f-perch" && s.Id.StartsWith("off/f", StringComparison.Ordinal));
        foreach (string on in new[] { "on/f-perch/front-left", "on/f-stop/front-left", "on/f-spring/front-left", "on/f-mount/front-left",
            "on/f-strut/front-left" })
        {
            Assert.Contains(order.Steps, s => s.Id == on);
        }
    }

    [Fact]
    public void What_is_kept_moves_over_to_a_new_strut()
    {
        var from = Wagtail.Build("gravel-3")!;
        var order = Write(from, Both(from, AxlePlace.Front, c => c with { Damper = "d-now" }));
        foreach (string id in new[] { "f-mount", "f-spring", "f-stop", "f-perch" })
        {
            Assert.Contains(order.Steps, s => s.Id == $"off/{id}/front-left");
            Assert.Contains(order.Steps, s => s.Id == $"on/{id}/front-left");
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Everything_undone_is_done_up_again_with_its_torque(string job)
    {
        var order = Of(job);
        var map = new AccessMap(Wagtail.Access);
        foreach (var step in order.Steps.Where(s => s.Phase == OrderPhase.Fit))
        {
            foreach (var fastener in map[step.Node!.Value.Component].Fasteners)
            {
                var torque = Assert.Single(order.Torques, t => t.Node == step.Node && t.Fastener.Id == fastener.Id);
                Assert.Contains("N·m", torque.Torque, StringComparison.Ordinal);
                Assert.Contains("lbf·ft", torque.Torque, StringComparison.Ordinal);
                string when = fastener.When == TightenedWhen.OnItsWheels ? "ride" : step.Id.Split('/')[0];
                Assert.Contains(order.Steps, s => s.Id.StartsWith(when + "/", StringComparison.Ordinal) && s.Node == step.Node
                    && s.Fasteners.Any(f => f.Fastener.Id == fastener.Id));
            }
        }

        // What was only slackened is tightened too.
        foreach (var step in order.Steps.Where(s => s.Id.StartsWith("slack/", StringComparison.Ordinal)))
        {
            Assert.All(step.Fasteners, f => Assert.Contains(order.Torques, t => t.Node == f.Node && t.Fastener.Id == f.Fastener.Id));
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Nothing_is_fitted_before_what_it_needs_and_every_caution_stands_at_its_step(string job)
    {
        var order = Of(job);
        var map = new AccessMap(Wagtail.Access);
        var at = order.Steps.Select((s, i) => (s.Id, i)).ToDictionary(x => x.Id, x => x.i);
        foreach (var step in order.Steps.Where(s => s.Id.StartsWith("on/", StringComparison.Ordinal)))
        {
            // Whatever had to be off before it goes on after it.
            foreach (var (first, _) in map.Before(new Undoing(step.Node!.Value, Undone.Off)))
            {
                if (at.TryGetValue(ComponentId("on", first.Node), out int later))
                {
                    Assert.True(later > at[step.Id], $"{first.Node} is fitted before {step.Id}");
                }
            }
        }

        foreach (var step in order.Steps.Where(s =>
            s.Node is not null && s.Phase is OrderPhase.TakeOff or OrderPhase.Fit && !s.Id.StartsWith("tight/", StringComparison.Ordinal)))
        {
            var time = step.Phase == OrderPhase.TakeOff ? HazardTime.TakingOff : HazardTime.Fitting;
            foreach (var hazard in map[step.Node!.Value.Component].Hazards.Where(h => h.When == time || h.When == HazardTime.BothWays))
            {
                Assert.Contains(hazard.Sentence, step.Cautions);
            }
        }

        Assert.Equal(order.Steps.Count, order.Steps.Select(s => s.Id).Distinct().Count());
        Assert.Empty(order.Gaps);
    }

    private static string ComponentId(string verb, AccessNode node) =>
        node.Corner is { } c ? $"{verb}/{node.Component}/{c.Words().Replace(' ', '-')}" : $"{verb}/{node.Component}";

    [Fact]
    public void Cautions_that_must_never_be_missing_are_there()
    {
        var order = Springs();
        Assert.Contains("never by the top nut alone", string.Join(' ', Step("off/f-mount/front-left").Cautions), StringComparison.Ordinal);
        Assert.Contains("stands first", string.Join(' ', Step("standing/front/lift").Cautions), StringComparison.Ordinal);
        Assert.Contains("Both wheels of the axle hang", string.Join(' ', Step("standing/front/lift").Details), StringComparison.Ordinal);
        Assert.Contains("brake hose", string.Join(' ', Step("off/f-hose/front-left").Cautions), StringComparison.Ordinal);
        Assert.Contains("sensor wire", string.Join(' ', Step("off/f-sensor/front-left").Cautions), StringComparison.Ordinal);
        Assert.Contains("battery", string.Join(' ', Step("off/f-brace").Cautions), StringComparison.Ordinal);
        Assert.Contains("bonded", string.Join(' ', Step("ride/f-arm-pivots/front-left").Details), StringComparison.Ordinal);
        Assert.Contains("approval", Step("set/approval").Title, StringComparison.Ordinal);
        Assert.Equal(4 * 1 + 0, Wheels().Steps.Single(s => s.Id == "later/recheck").Fasteners.Count);
        OrderStep Step(string id) => order.Steps.Single(s => s.Id == id);
    }

    [Fact]
    public void Steps_keep_their_ids_when_the_job_grows()
    {
        var from = Wagtail.Build("now")!;
        var small = Write(from, Both(from, AxlePlace.Front, c => c with { TopMount = "m-ball" }));
        var large = Write(from, Both(from, AxlePlace.Front, c => c with { TopMount = "m-ball", Stack = ["f-6-250"], Wheel = "w-winter" }));
        Assert.Superset(small.Steps.Select(s => s.Id).ToHashSet(), large.Steps.Select(s => s.Id).ToHashSet());
    }

    [Fact]
    public void Pressures_alone_lift_no_car()
    {
        var from = Wagtail.Build("now")!;
        var order = Write(from, Both(from, AxlePlace.Front, c => c with { Pressure = Reading.Of("2.4 bar", Dimension.Pressure) }));
        Assert.DoesNotContain(order.Steps, s =>
            s.Phase is OrderPhase.Standing or OrderPhase.TakeOff or OrderPhase.Fit or OrderPhase.LetDown);
        Assert.Contains("front left: 2.4 bar", order.Steps.Single(s => s.Id == "set/pressures").Details);
    }

    [Fact]
    public void The_same_build_is_no_job_and_a_missing_component_is_told()
    {
        var from = Wagtail.Build("now")!;
        Assert.Contains("nothing to do", Assert.Single(OrderWriter.Write(Wagtail, from, from).Problems).Cure, StringComparison.Ordinal);
        var bare = Wagtail with { Access = new AccessGraph() };
        var order = OrderWriter.Write(bare, from, Wagtail.Build("gravel-3")!).Value;
        Assert.Contains(order.Gaps, g => g.Contains("how the spring at the front comes off", StringComparison.Ordinal));
        Assert.Contains(order.Gaps, g => g.Contains("how the wheel at the rear comes off", StringComparison.Ordinal));
    }

    [Fact]
    public void New_parts_on_one_side_only_are_asked_about()
    {
        var from = Wagtail.Build("gravel-3")!;
        var order = Write(from, from.With(CornerPlace.FrontLeft, from.FrontLeft with { Stack = ["f-8-220"] }) with { Id = "odd" });
        Assert.Contains("in pairs", string.Join(' ', order.Steps.Single(s => s.Id == "prepare/pairs").Cautions), StringComparison.Ordinal);
        Assert.DoesNotContain(order.Steps, s => s.Id.EndsWith("front-right", StringComparison.Ordinal));
    }

    [Fact]
    public void Parts_to_lay_ready_are_counted_and_priced()
    {
        var parts = Of("everything").Parts;
        var helper = parts.Single(p => p.Part.Id == "f-helper");
        Assert.Equal((2, 76m, "front left, front right"), (helper.Count, helper.Sum, helper.Where));
        Assert.DoesNotContain(parts, p => p.Part.Id is "bar-front" or "d-rear");
    }
}
