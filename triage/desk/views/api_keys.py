"""The keys of the firm's own system. A key is shown once, on the page after it was made.

Between the two it waits in the session, for as long as a browser needs to follow a redirect.
"""

from django.contrib import messages
from django.db.models import F
from django.http import Http404, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from triage.desk.access import require_role
from triage.desk.forms import KeyForm
from triage.desk.layout import render_page
from triage.desk.request import MemberRequest
from triage.jobsheet.errors import Refused
from triage.models import ApiKey, Firm
from triage.models.firm import Role
from triage.web.api_keys import PREFIX, make_key, revoke_key

SHOW_ONCE = "desk_api_key"


@require_http_methods(["GET", "HEAD", "POST"])
@require_role(Role.OWNER)
def api_keys(request: MemberRequest) -> HttpResponse:
    firm = request.member.firm
    form, status = KeyForm(), 200
    if request.method == "POST":
        form, status = KeyForm(request.POST), 400
        if form.is_valid() and _created(request, firm, form):
            return HttpResponseRedirect(reverse("desk-keys"))
    context = {
        "form": form,
        "firm": firm,
        "keys": ApiKey.objects.filter(firm=firm).order_by(F("revoked").desc(nulls_first=True), "-created", "-pk"),
        "prefix": PREFIX,
        "made": request.session.pop(SHOW_ONCE, "") if status == 200 else "",
    }
    return render_page(request, "api_keys", context, status=status)


def _created(request: MemberRequest, firm: Firm, form: KeyForm) -> bool:
    """Whether there is a new key; why there is none stands beside the name."""
    try:
        _key, request.session[SHOW_ONCE] = make_key(firm=firm, name=form.cleaned_data["name"])
    except Refused as refused:
        form.add_error("name", str(refused))
        return False
    return True


@require_POST
@require_role(Role.OWNER)
def revoke_api_key(request: MemberRequest, number: int) -> HttpResponse:
    key = ApiKey.objects.filter(firm=request.member.firm_id, pk=number).first()
    if key is None:
        raise Http404
    ended = revoke_key(key=key)
    sentence = _("Key “%(name)s” revoked.") if ended else _("Key “%(name)s” had already been revoked.")
    messages.success(request, sentence % {"name": key.name})
    return HttpResponseRedirect(reverse("desk-keys"))
