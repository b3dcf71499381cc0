using Microsoft.Playwright;

namespace Shaftwright.App.Tests.Pages;

/// <summary>A slip that is refused while the finger is on its way: nothing moves under it, and the answer leads back to the
/// box.</summary>
[Collection(PageTests.Name)]
public class RefusedPageTests(Bench bench)
{
    [Fact]
    public async Task BoxLeftByAPress_ItsRefusalWaitsForTheRelease_AndTheAnswerLeadsBackToIt()
    {
        await using var phone = await bench.Phone();
        await phone.Open("car-on-stands");
        await phone.Asked("How long is the trial shaft?");
        await phone.Type("Joint centre to joint centre", "4..5");
        // At its upper edge: the least room made above would take it away.
        await Hold(phone, Button(phone, "Next"));
        await phone.Page.Mouse.UpAsync();
        await phone.Asked("Let the wheel hang at full droop.");

        await phone.Type("Goes in", "1..4");
        var other = phone.Page.GetByRole(
            AriaRole.Textbox,
            new() { Name = "Comes out", Exact = true }
        );
        var refusal = phone.Page.Locator(".measure .no");
        await Hold(phone, other);
        Assert.Equal(0, await refusal.CountAsync());
        await phone.Page.Mouse.UpAsync();
        await Phone.Expect(refusal).ToContainTextAsync("“1..4 mm”");
        await Phone.Expect(other).ToBeFocusedAsync();

        await phone.Follow("car-on-stands/answer");
        await Phone.Expect(phone.Page.Locator(".slip")).ToHaveCountAsync(2);
        await phone.Look("refused-answer");
        await phone.Press("Put what goes in at droop right");
        await phone.Asked("Let the wheel hang at full droop.");
        await Phone
            .Expect(
                phone.Page.GetByRole(AriaRole.Textbox, new() { Name = "Goes in", Exact = true })
            )
            .ToBeFocusedAsync();
    }

    private static ILocator Button(Phone phone, string named) =>
        phone.Page.GetByRole(AriaRole.Button, new() { Name = named, Exact = true });

    /// <summary>Presses at the upper edge and stays, as long as a screen needs to draw anew.</summary>
    private static async Task Hold(Phone phone, ILocator on)
    {
        await on.ScrollIntoViewIfNeededAsync();
        var box = (await on.BoundingBoxAsync())!;
        await phone.Page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + 3);
        await phone.Page.Mouse.DownAsync();
        await phone.Page.EvaluateAsync(
            "() => new Promise(drawn => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(drawn, 200))))"
        );
    }
}
