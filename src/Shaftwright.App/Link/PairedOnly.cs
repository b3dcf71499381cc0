using Microsoft.Extensions.Primitives;
using Shaftwright.App.Api;
using Shaftwright.Records.Devices;

namespace Shaftwright.App.Link;

/// <summary>Lets phones in by their token, and keeps from them what is for the laptop alone.</summary>
internal sealed class PairedOnly(RequestDelegate next, GarageLink link)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (Door.Of(context).Laptop)
            return next(context);
        var reach = context.GetEndpoint()?.Metadata.GetMetadata<Reach>();
        if (reach == Reach.Anyone)
            return next(context);
        if (reach == Reach.Laptop)
            return Troubles.Answer(
                context,
                StatusCodes.Status403Forbidden,
                "That is done at the laptop itself, not over the network.",
                "the laptop's own page Phones"
            );
        // A cookie goes along with whatever asks. Another site's page must not even make this one look something up.
        if (!FromOurPages(context.Request.Headers["Sec-Fetch-Site"]))
            return Troubles.Answer(
                context,
                StatusCodes.Status403Forbidden,
                "Another site may not ask anything here.",
                "requests from Shaftwright's own pages"
            );
        var (answer, _) = link.Admit(context);
        if (answer == Admission.Known)
            return next(context);
        return Troubles.Answer(
            context,
            StatusCodes.Status401Unauthorized,
            WhyNot(answer),
            "pairing with a code from the page Phones on the laptop"
        );
    }

    /// <summary>Why a phone may not come in, in words.</summary>
    public static string WhyNot(Admission answer) =>
        answer switch
        {
            Admission.Revoked => "This phone was taken off the laptop's list.",
            Admission.Expired =>
                "The pairing of this phone is over: it lasts 12 hours over a plain connection, else until it is unused for 180 days.",
            _ => "This phone is not paired with this laptop.",
        };

    private static bool FromOurPages(StringValues site) =>
        StringValues.IsNullOrEmpty(site) || site == "same-origin" || site == "none";
}
