using Bunit;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Web.Components.WorkOrders;
using Cornerwright.Workshop.WorkOrders;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Pages;

public sealed class WorkOrderPagesTests : PageContext
{
    private readonly string _photos = Directory.CreateTempSubdirectory("cornerwright-photos-").FullName;

    public WorkOrderPagesTests()
    {
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton(PhotoStore.At(_photos));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(_photos, recursive: true);
    }

    [Fact]
    public void A_job_is_begun_once_and_its_list_opened()
    {
        var page = Render<OrderPage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, "gravel-3"));
        page.WaitForElement("[data-order=ready]");
        Press(page, "Begin this job");
        var navigation = Services.GetRequiredService<NavigationManager>();
        page.WaitForAssertion(() => Assert.EndsWith("/job/gravel-as-it-will-be-driven", navigation.Uri, StringComparison.Ordinal));
        var job = Assert.Single(Garage.Store.Load(CarId).Value.Car.Log.Jobs);
        Assert.Equal(("now", "gravel-3"), (job.From, job.To));
        page.WaitForAssertion(() => Assert.Contains("Go on ticking off", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void The_paper_pairs_the_wheels_and_loses_no_step()
    {
        var page = Render<OrderPage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, "gravel-3"));
        page.WaitForElement("[data-order=ready]");
        var car = Bench.Car!;
        var order = OrderWriter.Write(car, car.Build("now")!, car.Build("gravel-3")!).Value;
        Assert.Equal(order.Steps.Count, page.FindAll(".steps .box").Count);
        Assert.True(page.FindAll(".steps > li").Count < order.Steps.Count * 0.7);
        foreach (string caution in order.Steps.SelectMany(s => s.Cautions).Distinct())
        {
            Assert.Contains(page.FindAll(".warn"), w => w.TextContent.Contains(caution, StringComparison.Ordinal));
        }

        foreach (var torque in order.Torques)
        {
            Assert.Contains(page.FindAll(".torques tbody tr"), r => r.TextContent.Contains(torque.Fastener.Name, StringComparison.Ordinal)
                && r.TextContent.Contains(torque.Torque, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_differs_between_the_wheels_is_told_for_each()
    {
        OrderStep Step(string corner, string height) => new()
        {
            Id = "tight/f-perch/" + corner.Replace(' ', '-'), Phase = OrderPhase.Fit, Title = "Set, then tighten: perch", Place = corner,
                Details = ["Same for both.", "Perch height: " + height],
            Node = new AccessNode("f-perch", corner == "front left" ? Cornerwright.Garage.Chassis.CornerPlace.FrontLeft
                : Cornerwright.Garage.Chassis.CornerPlace.FrontRight),
        };
        var row = Assert.Single(PaperRow.Of([Step("front left", "290 mm"), Step("front right", "292 mm")]));
        Assert.Equal(["front left", "front right"], row.Places);
        Assert.Equal(["Same for both.", "front left: Perch height: 290 mm", "front right: Perch height: 292 mm"], row.Details);
    }

    [Fact]
    public async Task A_finished_job_is_noted_and_its_torques_are_put_among_the_reminders()
    {
        await Bench.Open(CarId);
        Bench.Apply("job", car => car with { Log = car.Log.With(new Job { Id = "j", Name = "Gravel", From = "now", To = "gravel-3" }) });
        int entries = Bench.Car!.Log.Entries.Count, reminders = Bench.Car.Log.Reminders.Count;
        var page = Render<LogPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("[data-job]");
        Press(page, "Finish");
        Act(page, () => page.Find(".finish input:not([type=date])").Change("84 210 kmh"));
        Press(page, "Finish it and note it");
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll(".finish .cw-problem")));
        Assert.Null(Bench.Car!.Log.Jobs[0].Finished);

        Act(page, () => page.Find(".finish input:not([type=date])").Change("84910 km"));
        Press(page, "Finish it and note it");
        page.WaitForAssertion(() => Assert.NotNull(Bench.Car!.Log.Jobs[0].Finished));
        Assert.Equal(entries + 1, Bench.Car!.Log.Entries.Count);
        Assert.Contains("between 84960 km and 85010 km", Assert.Single(Bench.Car.Log.Reminders, r => r.Job == "j").What,
            StringComparison.Ordinal);
        Assert.Equal(reminders + 1, Bench.Car.Log.Reminders.Count);
        Assert.Equal("gravel-3", CarNow.Of(Bench.Car)!.Id);
        Bench.Undo();
        Assert.Null(Bench.Car!.Log.Jobs[0].Finished);
        Assert.Equal(entries, Bench.Car.Log.Entries.Count);
    }

    [Fact]
    public void A_settling_plan_a_new_entry_and_a_reminder_done()
    {
        var page = Render<LogPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("#h-due");
        int before = Bench.Car!.Log.Reminders.Count;
        Press(page, "Put it into the reminders");
        page.WaitForAssertion(() => Assert.Equal(before + 3, Bench.Car!.Log.Reminders.Count));
        Press(page, "Done");
        page.WaitForAssertion(() => Assert.Single(Bench.Car!.Log.Reminders, r => r.Done is not null));
        Press(page, "Tyre wear");
        page.WaitForAssertion(() => Assert.Equal(4, Bench.Car!.Log.Entries[^1].Corners.Count));
    }

    [Fact]
    public void Photos_are_kept_by_their_content_and_what_is_no_picture_is_refused()
    {
        var page = Render<LogPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement(".entries details");
        byte[] picture = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];
        var box = page.FindComponents<Microsoft.AspNetCore.Components.Forms.InputFile>()[0];
        box.UploadFiles(
            InputFileContent.CreateFromBinary(picture, "arch.png", contentType: "image/png"),
            InputFileContent.CreateFromBinary(picture, "the same again.png", contentType: "image/png"),
            InputFileContent.CreateFromText("not a picture", "note.jpg", contentType: "image/jpeg"));
        page.WaitForAssertion(() => Assert.Contains("JPEG, PNG or WebP", page.Markup, StringComparison.Ordinal));
        var photo = Assert.Single(Bench.Car!.Log.Entries.SelectMany(e => e.Photos));
        Assert.Equal((Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(picture)), "arch"), (photo.Hash, photo.Name));
        Assert.Single(Directory.GetFiles(_photos));
        page.WaitForAssertion(() => Assert.Equal("/photos/" + photo.Hash, page.Find(".photos img").GetAttribute("src")));
    }

    [Fact]
    public void A_general_graph_takes_an_axles_place_and_undo_brings_the_old_one_back()
    {
        var page = Render<AccessPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("#h-list");
        var before = Bench.Car!.Access;
        Act(page, () => page.Find("#kind-Rear").Change(nameof(Cornerwright.Garage.Access.Starting.StartingKind.TwistBeam)));
        Act(page, () => page.FindAll("button").Last(b => b.TextContent.Trim() == "Put in").Click());
        page.WaitForAssertion(() => Assert.NotNull(Bench.Car!.Access.Find("r-beam")));
        Assert.Null(Bench.Car!.Access.Find("r-spring-link"));
        Assert.NotNull(Bench.Car.Access.Find("f-strut"));
        Assert.Contains("no torque yet", page.Markup, StringComparison.Ordinal);
        Bench.Undo();
        Assert.Same(before, Bench.Car!.Access);
    }

    [Fact]
    public async Task A_circle_is_shown_as_soon_as_it_is_made()
    {
        await Bench.Open(CarId);
        Bench.Apply("circle", car => car with
        {
            Access = car.Access with
            {
                Components = [.. car.Access.Components.Select(c =>
                    c.Id == "f-wheel" ? c with { BeforeOff = [new Prerequisite { Component = "f-strut" }] } : c)],
            },
        });
        var page = Render<AccessPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("[role=alert]");
        Assert.Contains("Wheel → Strut, complete → Wheel", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        var order = Render<OrderPage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, "gravel-3"));
        order.WaitForAssertion(() => Assert.Contains("Wheel → Strut, complete → Wheel", order.Markup, StringComparison.Ordinal));
    }
}
